import type { Plan } from '../../core/arranger/program';
import type { Style } from '../../core/players/style';
import { useSession } from './session-context';
import { useChosen } from './use-chosen';

/** The plan of choruses and a way to change parts of it. */
export const usePlan = (): readonly [Plan, (change: Partial<Plan>) => void] => {
  const { commands } = useSession();
  const plan = useChosen((settings) => settings.plan);
  return [plan, (change) => commands.choose({ plan: { ...plan, ...change } })];
};

/** The band's style and a way to change parts of it. */
export const useStyle = (): readonly [Style, (change: Partial<Style>) => void] => {
  const { commands } = useSession();
  const style = useChosen((settings) => settings.style);
  return [style, (change) => commands.choose({ style: { ...style, ...change } })];
};
