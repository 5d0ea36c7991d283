import { useState } from 'react';
import type { LinkedText } from '../../../app/book/song-links';
import { KeptText } from '../../controls/kept-text';
import { useSession } from '../../state/session-context';

/** Hands a link on by the sheet of the platform; nothing where there is none, since it can be copied. */
const ShareLink = ({ url }: { readonly url: string }) => {
  const { commands } = useSession();
  const [trouble, setTrouble] = useState('');
  if (!('share' in navigator)) return null;
  return (
    <>
      <button type="button" className="tool" onClick={() => void commands.shareLink(url).then(setTrouble)}>
        Share the link
      </button>
      <span role="status">{trouble}</span>
    </>
  );
};

/** A link that opens a song complete in another browser; `song` is its id, `null` what is on the stand. */
export const SongLink = ({ song }: { readonly song: string | null }) => {
  const { commands } = useSession();
  const [link, setLink] = useState<LinkedText | null>(null);
  return (
    <>
      <button type="button" className="tool" onClick={() => void commands.linkTo(song).then(setLink)}>
        {song === null ? 'Link to the stand as it is' : 'Link to this song'}
      </button>
      {link !== null && 'text' in link && (
        <>
          <KeptText label="Link" text={link.text} />
          <ShareLink url={link.text} />
          <p className="hint">
            {link.text.length} characters. {song === null ? 'All of it' : 'The song'} is in the link itself:
            nothing is kept on a server.
          </p>
        </>
      )}
      {link !== null && 'trouble' in link && (
        <p role="alert" className="wrong">
          {link.trouble}
        </p>
      )}
    </>
  );
};
