import { useEffect } from 'react';
import { Choice } from '../controls/choice';
import { useSelected, useSession } from '../state/session-context';

/** Which kind of audio file is made, of those that can be made here; one choice for songs and sets. */
export const KindChoice = ({ hint }: { readonly hint?: string }) => {
  const { commands } = useSession();
  const kind = useSelected((state) => state.takeAway.choices.kind);
  const encodings = useSelected((state) => state.takeAway.encodings);
  useEffect(() => void commands.findEncodings(), [commands]);
  return (
    <Choice
      label="Kind of file"
      value={kind}
      options={[
        { value: 'wav', text: 'WAV, nothing lost' },
        ...encodings.map(({ id, name, bitrate }) => ({
          value: id,
          text: `${name}, compressed, ${bitrate / 1000} kbit/s`,
        })),
      ]}
      {...(hint !== undefined && { hint })}
      onChoose={(chosen) => commands.chooseTakeAway({ kind: chosen })}
    />
  );
};
