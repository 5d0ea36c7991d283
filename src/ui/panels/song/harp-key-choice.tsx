import { harpName } from '../../../core/fit/advice-words';
import type { OwnedHarp } from '../../../core/harp/harp-case';
import { inCase } from '../../../core/song/harp-in-case';
import type { NoteNames } from '../../../core/theory/note-names';
import { keyName, PITCH_CLASSES } from '../../../core/theory/pitch';
import type { PitchClass } from '../../../core/theory/units';
import { Choice, type Option } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { useChosen } from '../../state/use-chosen';
import { useNames } from '../../state/use-names';

const keyValue = (key: PitchClass): string => `key ${key}`;
const caseValue = ({ id }: OwnedHarp): string => `case ${id}`;

/** A standard harp by its key alone, any other by what it is called. */
const caseText = (harp: OwnedHarp, names: NoteNames): string => {
  const key = keyName(harp.key, 'major');
  const name = harpName(harp);
  return harp.name || names.key(name === `${key} harp` ? key : name);
};

/** The harp in hand: the harps of the case first, then every other key of its tuning. */
export const HarpKeyChoice = () => {
  const { commands } = useSession();
  const names = useNames();
  const keyText = (key: PitchClass): string => names.key(keyName(key, 'major'));
  const settings = useChosen((chosen) => chosen);
  const harpCase = useSelected((state) => state.harpCase);
  const inHand = inCase(settings, harpCase);
  const others = PITCH_CLASSES.filter((harpKey) => inCase({ ...settings, harpKey }, harpCase) === null);
  const options: readonly Option<string>[] = [
    ...harpCase.map((harp) => ({
      value: caseValue(harp),
      text: caseText(harp, names),
      closed: keyText(harp.key),
      group: 'In your case',
    })),
    ...others.map((key) => ({
      value: keyValue(key),
      text: keyText(key),
      group: harpCase.length === 0 ? '' : 'Other harps',
    })),
  ];
  const choose = (value: string): void => {
    const harp = harpCase.find((each) => caseValue(each) === value);
    const key = PITCH_CLASSES.find((each) => keyValue(each) === value);
    if (harp !== undefined) commands.takeHarp(harp);
    else if (key !== undefined) commands.chooseHarpKey(key);
  };
  return (
    <Choice
      label="Harp key"
      size="short"
      value={inHand === null ? keyValue(settings.harpKey) : caseValue(inHand)}
      options={options}
      onChoose={choose}
    />
  );
};
