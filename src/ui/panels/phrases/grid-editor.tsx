import { type KeyboardEvent, useState } from 'react';
import { gridSteps } from '../../../core/phrase/edit-phrase';
import type { Phrase } from '../../../core/phrase/phrase';
import { Choice } from '../../controls/choice';
import { useSelected } from '../../state/session-context';
import { type Act, actsOn, addedAt, draggedTo, nextTick } from './grid-acts';
import { noteWords } from './grid-place';
import { PhraseGrid } from './phrase-grid';
import type { PhraseDraft } from './use-phrase-draft';

const STEP_WORDS: Readonly<Record<number, string>> = {
  480: 'Quarters',
  240: 'Eighths',
  160: 'Triplets',
  120: 'Sixteenths',
  720: 'Beats',
};

const pressed = ({ key, shiftKey }: KeyboardEvent): string =>
  `${shiftKey && key.length > 1 ? 'Shift+' : ''}${key}`;

interface Props {
  readonly draft: PhraseDraft;
}

/** The phrase as a grid, with every change by mouse, finger, button and key. */
export const GridEditor = ({ draft }: Props) => {
  const { harp } = useSelected((state) => state.tune);
  const { phrase } = draft.reading;
  const { notes } = phrase;
  const steps = gridSteps(phrase.meter);
  const [step, setStep] = useState(steps[0] ?? 240);
  const [selected, setSelected] = useState(0);
  const index = Math.min(selected, notes.length - 1);
  const chosen = notes[index];
  const ground = { phrase, harp, step };
  const acts = actsOn(ground, index);
  const put = (changed: Phrase, at: number): void => {
    draft.draw(changed);
    setSelected(notes.filter((note) => note.at < at).length);
  };
  const run = ({ text, change }: Act): void => {
    if (text === 'Add') put(change(), nextTick(ground, chosen));
    else draft.draw(change());
  };
  const onKeyDown = (event: KeyboardEvent<HTMLFieldSetElement>): void => {
    const { target, key } = event;
    if (target instanceof HTMLElement && target.closest('select') !== null) return;
    const control = event.ctrlKey || event.metaKey;
    const act = acts.find(({ keys, needsNote }) => keys.includes(pressed(event)) && !(needsNote && !chosen));
    const to = { Home: 0, End: notes.length - 1, PageUp: index - 1, PageDown: index + 1 }[key];
    if (control && key.toLowerCase() === 'z') (event.shiftKey ? draft.redo : draft.undo)();
    else if (to !== undefined) setSelected(Math.max(0, Math.min(notes.length - 1, to)));
    else if (act !== undefined && !control) run(act);
    else return;
    event.preventDefault();
  };
  return (
    <fieldset className="group" data-own-keys="" onKeyDown={onKeyDown}>
      <legend className="unseen">The phrase as a grid</legend>
      <PhraseGrid
        phrase={phrase}
        holes={harp.reeds.length / 2}
        step={step}
        selected={index}
        onSelect={setSelected}
        onAdd={(at, hole) => put(addedAt(ground, chosen, at, hole), at)}
        onDragged={(which, drag) => draft.draw(draggedTo(ground, which, drag))}
      />
      <p className="hint" role="status">
        {chosen === undefined
          ? 'Press on the grid where a note is to be, or Add.'
          : `${noteWords(chosen, phrase.meter)}.`}
      </p>
      <div className="grid-tools">
        <button type="button" className="tool" disabled={!draft.canUndo} onClick={draft.undo}>
          Undo
        </button>
        <button type="button" className="tool" disabled={!draft.canRedo} onClick={draft.redo}>
          Redo
        </button>
        {acts.map((act) => (
          <button
            key={act.text}
            type="button"
            className="tool"
            disabled={act.needsNote && !chosen}
            onClick={() => run(act)}
          >
            {act.text}
          </button>
        ))}
      </div>
      <Choice
        label="Grid"
        value={step}
        options={steps.map((value) => ({ value, text: STEP_WORDS[value] ?? String(value) }))}
        hint="Keys on a note: arrows move it and change its hole, Shift and arrows its length, B the breath, . and , the bend; A adds, Delete deletes, Page keys go from note to note."
        onChoose={setStep}
      />
    </fieldset>
  );
};
