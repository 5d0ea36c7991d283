/** How near is right: first contact, developing, secure, expert. */
export const BEND_LEVELS = ['first', 'developing', 'secure', 'expert'] as const;
export type BendLevel = (typeof BEND_LEVELS)[number];

/** What is heard before a try: the sound itself, a drone an octave below that goes on under it, or nothing. */
export const BEND_LEADS = ['tone', 'drone', 'nothing'] as const;
export type BendLead = (typeof BEND_LEADS)[number];

/** How bends are practised. */
export interface BendChoice {
  readonly level: BendLevel;
  readonly lead: BendLead;
  /** Results are shown on the drawings of the harp, and decide which bends and overbends are in reach. */
  readonly byResults: boolean;
}
