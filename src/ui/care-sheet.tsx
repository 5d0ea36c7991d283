import { Sheet } from './sheet';

const KEYS: readonly (readonly [string, string])[] = [
  ['Space', 'play and stop'],
  ['← →', 'one bar back or on'],
  ['↑ ↓', 'one line back or on'],
  ['+ −', 'tempo up or down'],
  ['T', 'tap the tempo'],
  ['R', 'repeat this bar, or stop repeating'],
  ['Escape', 'close a panel'],
];

/** Cautions, keys, and what the program does with what it knows. */
export const CareSheet = ({ onClose }: { readonly onClose: () => void }) => (
  <Sheet title="Care" onClose={onClose}>
    <section className="group">
      <h3>Ears</h3>
      <p>
        Start quietly and stay where you can talk over the band. The World Health Organization and the ITU
        count 80 dBA for 40 hours a week as the most an adult’s ears should get; every 3 dB more halves the
        time. Take quiet breaks. Ringing or dullness afterwards is a reason to see an audiologist. At work,
        your local rules on noise come first.
      </p>
    </section>
    <section className="group">
      <h3>Breath</h3>
      <p>
        Stop when you feel light-headed, put the harp down, breathe normally and rest before you go on. If it
        comes back, or you live with a lung or heart condition, ask a doctor before long sessions.
      </p>
    </section>
    <section className="group">
      <h3>Reeds</h3>
      <p>
        Bends and overbends come from the shape of the mouth, not from force. If a note does not come, play
        softer and try again later, or ask a teacher. Reeds that are pushed go flat and crack. Tap the harp
        dry, and do not share one that has not been cleaned.
      </p>
    </section>
    <section className="group">
      <h3>Keys</h3>
      <dl className="keys-list">
        {KEYS.map(([key, what]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
    </section>
    <section className="group">
      <h3>Your data</h3>
      <p>
        Everything stays in this browser. There is no account, and once the page has loaded it asks the
        network for nothing.
      </p>
    </section>
  </Sheet>
);
