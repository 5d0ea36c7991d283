import { FEELS } from '../../../core/feels/feels';
import type { Tuning } from '../../../core/harp/harp';
import { POSITIONS, positionTitle } from '../../../core/harp/positions';
import { TUNINGS } from '../../../core/harp/tunings';
import { formOf } from '../../../core/song/tune';
import { keyName, PITCH_CLASSES } from '../../../core/theory/pitch';
import { Choice } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { useChosen } from '../../state/use-chosen';
import { useNames } from '../../state/use-names';
import { formOptions } from './form-options';
import { HarpKeyChoice } from './harp-key-choice';

/** A tuning's name where there is little room: what stands in brackets only explains it. */
const shortName = (name: string): string => name.replace(/ \(.*\)$/, '').replace(' and ', ', ');

/** What is played and on what: the choices every song needs. */
export const SongChoices = () => {
  const { commands } = useSession();
  const names = useNames();
  const settings = useChosen((settings) => settings);
  const { key, mode, tonic } = useSelected(({ waiting, tune }) => (waiting?.tune ?? tune).chart);
  const own = useSelected((state) => state.ownTunings);
  const ownCharts = useSelected((state) => state.ownCharts);
  const form = formOf(settings, ownCharts);
  const listed: readonly Tuning[] = [...TUNINGS, ...own];
  const tunings = listed.some(({ id }) => id === settings.tuning.id) ? listed : [...listed, settings.tuning];
  return (
    <>
      <Choice
        label="Feel"
        rank="minor"
        value={settings.style.feel}
        options={FEELS.map(({ id, name }) => ({ value: id, text: name }))}
        onChoose={commands.chooseFeel}
      />
      <Choice
        label="Form"
        size="long"
        value={typeof form === 'string' ? form : form.id}
        options={formOptions(ownCharts)}
        onChoose={commands.chooseForm}
      />
      <Choice
        label="Song key"
        size="short"
        value={key}
        options={PITCH_CLASSES.map((pc) => ({
          value: pc,
          text: names.key(`${pc === key ? tonic : keyName(pc, mode)}${mode === 'minor' ? ' minor' : ''}`),
        }))}
        onChoose={commands.chooseSongKey}
      />
      <HarpKeyChoice />
      <Choice
        label="Position"
        rank="second"
        size="long"
        value={settings.position}
        options={POSITIONS.map(({ number }) => ({ value: number as number, text: positionTitle(number) }))}
        onChoose={commands.choosePosition}
      />
      <Choice
        label="Tuning"
        rank="least"
        value={settings.tuning.id}
        options={tunings.map(({ id, name }) => ({ value: id, text: name, closed: shortName(name) }))}
        onChoose={(id) =>
          commands.chooseTuning(tunings.find((tuning) => tuning.id === id) ?? settings.tuning)
        }
      />
    </>
  );
};
