/** Who plays: the harp voice calls, the player answers, or the player calls. */
export type Turn = 'listen' | 'answer' | 'lead';

/** What the player reads, large. */
export const TURN_WORDS: Readonly<Record<Turn, string>> = {
  listen: 'Listen',
  answer: 'Your turn',
  lead: 'Your call',
};

/** What is traded: the call itself comes back, something of one’s own answers it, or the player calls. */
export const TRADE_MODES = ['echo', 'answer', 'lead'] as const;
export type TradeMode = (typeof TRADE_MODES)[number];

/** Who answers where the player leads: the harp voice, or whoever plays the chords in the band. */
export const ANSWER_VOICES = ['harp', 'piano'] as const;
export type AnswerVoice = (typeof ANSWER_VOICES)[number];
