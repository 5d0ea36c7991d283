import type { RefObject } from 'react';
import { KeysMap } from './keys-map';
import type { MapProps } from './map-props';
import { useKeysParts } from './use-keys-parts';

interface Props extends MapProps {
  /** The room the drawing has to fit. */
  readonly room: RefObject<HTMLElement | null>;
}

/** The Keys drawing, laid as its room asks for. */
export const KeysDrawing = ({ room, ...given }: Props) => (
  <KeysMap {...given} {...useKeysParts(room, given.marks)} />
);
