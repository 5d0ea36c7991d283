import type { OwnChart } from '../chart-text/own-chart';
import type { History } from './history';

/** The charts that are being written. */
export interface ChartDrafts {
  /** Id of the open chart; null when none is. */
  readonly open: string | null;
  /** Changed charts by id, with what can be undone; charts that are not here are as saved. */
  readonly drafts: Readonly<Record<string, History<OwnChart>>>;
  /** The chart deleted last, to be brought back. */
  readonly deleted: DeletedChart | null;
  /** Ids of charts saved here that the storage has not taken yet. */
  readonly unwritten: readonly string[];
  /** Charts that began as another one which a second tab changed too, with the id of that one. */
  readonly splitFrom: Readonly<Record<string, string>>;
}

/** A chart that was deleted and can still be brought back. */
export interface DeletedChart {
  /** As it was saved; null when it never was. */
  readonly saved: OwnChart | null;
  readonly draft: History<OwnChart>;
}

/** Before any is begun. */
export const NO_DRAFTS: ChartDrafts = {
  open: null,
  drafts: {},
  deleted: null,
  unwritten: [],
  splitFrom: {},
};
