import type { Rendered, RenderRequest } from '../../src/audio/export/render-offline';

/**
 * What the program relies on in a renderer of files. The same list is held against the one that hums and the real one
 * in a browser. Each `act` is carried into the browser as text: it may use nothing but its arguments.
 */
export interface RendererBehaviour {
  readonly does: string;
  readonly act: (
    render: (request: RenderRequest) => Promise<Rendered>,
    request: Omit<RenderRequest, 'onChunk'>,
  ) => Promise<unknown>;
  readonly expected: unknown;
}

export const RENDERER_BEHAVIOURS: readonly RendererBehaviour[] = [
  {
    does: 'hands out as many frames as it says, both sides alike, at the rate that was asked for',
    act: async (render, request) => {
      let frames = 0;
      let alike = true;
      const onChunk = (left: Float32Array, right: Float32Array): void => {
        frames += left.length;
        alike &&= left.length === right.length;
      };
      const rendered = await render({ ...request, onChunk });
      return [rendered.frames === frames && frames > 0, alike, rendered.sampleRate === request.sampleRate];
    },
    expected: [true, true, true],
  },
  {
    does: 'tells how far it is, never back, to the end',
    act: async (render, request) => {
      const shares: number[] = [];
      await render({ ...request, onChunk: () => undefined, onProgress: (share) => shares.push(share) });
      const rises = shares.every((share, i) => share >= (shares[i - 1] ?? 0));
      return [rises, shares.at(-1)];
    },
    expected: [true, 1],
  },
  {
    does: 'waits for what takes its samples',
    act: async (render, request) => {
      let busy = false;
      let met = false;
      await render({
        ...request,
        onChunk: async () => {
          met ||= busy;
          busy = true;
          await new Promise((resolve) => setTimeout(resolve, 1));
          busy = false;
        },
      });
      return met;
    },
    expected: false,
  },
  {
    does: 'ends with the reason of whoever ended it, and hands out nothing more',
    act: async (render, request) => {
      const ending = new AbortController();
      let chunks = 0;
      const onChunk = (): void => {
        chunks += 1;
        ending.abort(new Error('enough'));
      };
      const reason = await render({ ...request, onChunk, signal: ending.signal }).catch(String);
      return [reason, chunks];
    },
    expected: ['Error: enough', 1],
  },
  {
    does: 'does not begin what was ended before',
    act: async (render, request) => {
      let chunks = 0;
      const onChunk = (): void => {
        chunks += 1;
      };
      const signal = AbortSignal.abort(new Error('enough'));
      return [await render({ ...request, onChunk, signal }).catch(String), chunks];
    },
    expected: ['Error: enough', 0],
  },
  {
    does: 'passes on what its samples could not be taken for',
    act: (render, request) =>
      render({
        ...request,
        onChunk: async () => {
          throw new Error('full');
        },
      }).catch(String),
    expected: 'Error: full',
  },
  {
    does: 'refuses to render no sections',
    act: async (render, request) => {
      const answer = render({ ...request, sections: [], onChunk: () => undefined });
      return answer.then(
        () => 'rendered',
        (error) => error instanceof RangeError,
      );
    },
    expected: true,
  },
];
