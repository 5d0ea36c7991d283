/** A sentence for the player: something to know, or trouble that something can be done about. */
export interface Notice {
  readonly id: string;
  readonly tone: 'note' | 'trouble';
  readonly text: string;
}
