import { PHRASE_LIMITS } from '../../../core/phrasebook/kept-phrase';
import { CALL_LEVELS, type CallLevel, LEVEL_WORDS } from '../../../core/practice/call-levels';
import { Choice } from '../../controls/choice';
import { TextField } from '../../controls/text-field';

/** What is written down beside the notes. */
export interface Facts {
  readonly name: string;
  readonly level: CallLevel;
  /** With commas between them. */
  readonly tags: string;
  readonly words: string;
}

interface Props {
  readonly facts: Facts;
  readonly onChange: (facts: Facts) => void;
}

const LONGEST_TAGS = 200;

/** Name, level, tags and a note to remember. */
export const PhraseFacts = ({ facts, onChange }: Props) => {
  const field = (label: string, name: 'name' | 'tags' | 'words', longest: number) => (
    <TextField
      label={label}
      longest={longest}
      value={facts[name]}
      onChange={(text) => onChange({ ...facts, [name]: text })}
    />
  );
  return (
    <>
      <div className="pair">
        {field('Name', 'name', PHRASE_LIMITS.name)}
        <Choice
          label="Level"
          value={facts.level}
          options={CALL_LEVELS.map((value) => ({ value, text: LEVEL_WORDS[value] }))}
          onChoose={(level) => onChange({ ...facts, level })}
        />
      </div>
      {field('Tags, with commas between them', 'tags', LONGEST_TAGS)}
      {field('To remember', 'words', PHRASE_LIMITS.words)}
    </>
  );
};
