import './tour.css';
import { useCallback, useEffect, useId, useRef, useState } from 'react';
import { useFrame } from '../state/use-frame';
import { TOUR_STEPS, type TourStep } from './tour-steps';

/** Room between the card and what it is about, and at the edges of the window, in CSS pixels. */
const GAP = 12;

/** What a step is about, where it can be seen. */
const targetOf = ({ at }: TourStep): HTMLElement | null => {
  for (const selector of at)
    for (const found of document.querySelectorAll<HTMLElement>(selector))
      if (found.getClientRects().length > 0) return found;
  return null;
};

/** Where the transport begins: the card never lies over Stop. */
const footTop = (): number =>
  document.querySelector('.transport')?.getBoundingClientRect().top ?? window.innerHeight;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The card stands under what it is about, or over it, or beside it, or where none of these fits in its lower part. */
const cardPlace = (
  target: DOMRect,
  { width, height }: Size,
): { readonly left: number; readonly top: number } => {
  const foot = footTop();
  const lowest = Math.max(GAP, foot - height - GAP);
  const left = Math.max(GAP, Math.min(target.left, window.innerWidth - width - GAP));
  if (target.bottom + GAP + height <= foot) return { left, top: target.bottom + GAP };
  if (target.top - GAP - height >= 0) return { left, top: target.top - GAP - height };
  const top = Math.min(Math.max(GAP, target.top), lowest);
  if (target.right + 2 * GAP + width <= window.innerWidth) return { left: target.right + GAP, top };
  if (target.left - 2 * GAP - width >= 0) return { left: target.left - GAP - width, top };
  return { left, top: lowest };
};

/** How far down the ring goes: what goes on behind the transport ends there. */
const ringBottom = ({ top, bottom }: DOMRect): number => {
  const foot = footTop();
  return top < foot ? Math.min(bottom, foot - 8) : bottom;
};

/** Keeps the ring around what a step is about, and the card beside it: the page goes on and may move meanwhile. */
const usePlaces = (step: TourStep) => {
  const ring = useRef<HTMLDivElement>(null);
  const card = useRef<HTMLElement>(null);
  useEffect(() => {
    // Its answer is none of an effect's business: some browsers give a promise.
    targetOf(step)?.scrollIntoView({ block: 'nearest' });
  }, [step]);
  const draw = useCallback(() => {
    const target = targetOf(step)?.getBoundingClientRect();
    if (!ring.current || !card.current) return;
    ring.current.hidden = target === undefined;
    if (target === undefined) return;
    const { offsetWidth: width, offsetHeight: height } = card.current;
    ring.current.style.translate = `${target.left - 6}px ${target.top - 6}px`;
    ring.current.style.width = `${target.width + 12}px`;
    ring.current.style.height = `${ringBottom(target) - target.top + 12}px`;
    const { left, top } = cardPlace(target, { width, height });
    card.current.style.translate = `${left}px ${top}px`;
  }, [step]);
  useFrame(true, draw);
  return { ring, card };
};

/** The tour: a sentence a step, beside the thing itself. It blocks nothing: the page can be used while it is open. */
export const Tour = ({ onLeave }: { readonly onLeave: () => void }) => {
  const [at, setAt] = useState(0);
  const step = TOUR_STEPS[at] ?? (TOUR_STEPS[0] as TourStep);
  const { ring, card } = usePlaces(step);
  const id = useId();
  const last = at === TOUR_STEPS.length - 1;
  useEffect(() => card.current?.focus(), [card]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && !event.defaultPrevented) onLeave();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onLeave]);
  return (
    <>
      <div className="tour-ring" ref={ring} aria-hidden="true" />
      <section className="tour" ref={card} tabIndex={-1} aria-labelledby={id}>
        <p className="tour-count" id={id}>
          Tour, step {at + 1} of {TOUR_STEPS.length}
        </p>
        <div aria-live="polite">
          <h2>{step.title}</h2>
          <p>{step.text}</p>
        </div>
        <div className="tour-ways">
          <button type="button" className="tool" onClick={last ? onLeave : () => setAt(at + 1)}>
            {last ? 'Done' : 'Next'}
          </button>
          {at > 0 && (
            <button type="button" className="tool" onClick={() => setAt(at - 1)}>
              Back
            </button>
          )}
          {!last && (
            <button type="button" className="plain" onClick={onLeave}>
              Leave the tour
            </button>
          )}
        </div>
      </section>
    </>
  );
};
