/** Who plays for how long: calls and answers in bars, in turn over the form. */

/** A call and its answer, in bars. */
export interface Trade {
  readonly call: number;
  readonly answer: number;
}

/** Plans with a name of their own; anything else is a list such as `2+2 1+1`. */
export const TRADE_PLANS = ['1+1', '2+2', '4+4', 'chorus'] as const;

/** Longest list kept, in characters, and most bars of a turn in it. */
export const PLAN_LIMITS = { text: 120, bars: 16, trades: 16 } as const;

/** A plan as it was read. */
export interface ReadPlan {
  /** In turn, from the beginning again when they are used up; empty where whole choruses alternate. */
  readonly trades: readonly Trade[];
  /** What could not be read, in a sentence; null when all could. */
  readonly problem: string | null;
}

const USUAL: Trade = { call: 2, answer: 2 };

const readTrade = (text: string): Trade | null => {
  const [, call, answer] = /^(\d{1,2})\+(\d{1,2})$/.exec(text) ?? [];
  const trade = { call: Number(call), answer: Number(answer) };
  const { bars } = PLAN_LIMITS;
  const fits = trade.call >= 1 && trade.call <= bars && trade.answer >= 1 && trade.answer <= bars;
  return fits ? trade : null;
};

/**
 * Reads a plan. Never throws; what is not understood is passed over.
 *
 * @example
 * readPlan('2+2 1+1').trades // [{ call: 2, answer: 2 }, { call: 1, answer: 1 }]
 */
export const readPlan = (text: string): ReadPlan => {
  const plain = text.trim().toLowerCase();
  if (plain === 'chorus') return { trades: [], problem: null };
  const words = plain
    .replace(/\s*\+\s*/g, '+')
    .split(/[\s,;]+/)
    .filter((word) => word !== '')
    .slice(0, PLAN_LIMITS.trades);
  const trades = words.flatMap((word) => readTrade(word) ?? []);
  const unread = words.filter((word) => readTrade(word) === null);
  const problem =
    trades.length > 0 && unread.length === 0
      ? null
      : `${unread.length > 0 ? `“${unread.join(' ').slice(0, 40)}” is no call and answer` : 'The list is empty'}: write bars of call and bars of answer, such as 2+2 1+1.`;
  return { trades: trades.length > 0 ? trades : [USUAL], problem };
};

/** The room of one call and its answer in a chorus. */
export interface TradeRoom {
  /** Index of its first bar. */
  readonly bar: number;
  readonly bars: number;
  readonly answer: number;
}

/**
 * The rooms of a plan over so many bars. Where the rest of the form is shorter than the trade due, it is shared alike,
 * the answer taking the odd bar; one bar alone is the player's.
 */
export const roomsOver = (bars: number, trades: readonly Trade[]): readonly TradeRoom[] => {
  const rooms: TradeRoom[] = [];
  let bar = 0;
  for (let i = 0; bar < bars - 1; i += 1) {
    const { call, answer } = trades[i % trades.length] ?? USUAL;
    const left = bars - bar;
    const whole = call + answer <= left;
    const room = whole
      ? { bar, bars: call, answer }
      : { bar, bars: Math.floor(left / 2), answer: Math.ceil(left / 2) };
    rooms.push(room);
    bar += room.bars + room.answer;
  }
  return rooms;
};
