import { soundId } from '../../core/harp/tab';
import { asBpm } from '../../core/theory/units';
import type { Exercise } from '../../core/today/practice-item';
import type { TodayStep } from '../../core/today/today-plan';
import type { TodayStand } from './today-needs';

/** Puts what a step needs on the stand, and lets it begin. */
export const createSetUp = (stand: TodayStand) => {
  const { store, orders, apply, ask } = stand;
  const play = (): void => void orders.play(0);
  const settings = () => store.getState().settings;
  const plain = (): void => apply({ ...settings(), trade: { ...settings().trade, on: false } });
  const bend = async (sound: string): Promise<void> => {
    const target = store.getState().tune.harp.sounds.find((each) => soundId(each) === sound);
    if (target === undefined) return;
    const practice = await ask().openBends();
    practice.start({ target, exercise: 'hold', given: false });
  };
  const exercise = (asked: Exercise): void => {
    switch (asked.kind) {
      case 'bend':
        void bend(asked.sound);
        break;
      case 'phrase':
        ask().callWith([asked.phrase]);
        play();
        break;
      case 'song':
        ask().openSong(asked.song);
        apply({ ...settings(), tempo: asBpm(asked.tempo) });
        play();
        break;
      case 'scale':
        plain();
        apply({ ...settings(), layer: asked.scale });
        play();
        break;
      default:
        plain();
        play();
    }
  };
  return (step: TodayStep): void => {
    if (step.kind === 'warm-up') ask().startWarmUp();
    else if (step.kind === 'due' || step.kind === 'new') exercise(step.item.exercise);
    else if (step.kind === 'joy') {
      if (step.song !== null) ask().openSong(step.song);
      play();
    }
  };
};
