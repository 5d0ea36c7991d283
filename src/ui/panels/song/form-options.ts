import { FORM_IDS, FORMS, type FormId, formBars } from '../../../core/chart/forms';
import type { OwnChart } from '../../../core/chart-text/own-chart';
import type { Option } from '../../controls/choice';

const groupOf = (id: FormId): string => {
  const form = FORMS[id];
  const bars = formBars(form).length;
  if (form.mode === 'minor') return 'Minor';
  if (bars > 12) return 'Longer';
  if (bars < 12) return 'Eight bars';
  return form.name.startsWith('Jazz') ? 'Jazz' : 'Twelve bars';
};

const BUILT_IN: readonly Option<string>[] = FORM_IDS.map((id) => ({
  value: id,
  text: FORMS[id].name,
  group: groupOf(id),
}));

/** Everything that can be chosen as form, under headings: the player's charts first. */
export const formOptions = (ownCharts: readonly OwnChart[]): readonly Option<string>[] => [
  ...ownCharts.map(({ id, name }) => ({ value: id, text: name, group: 'Your charts' })),
  ...BUILT_IN,
];
