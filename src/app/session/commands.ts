import type { BackupCommands } from '../keeping/backup';
import type { CopyCommands } from '../keeping/kept-copies';
import type { ShelfCommands } from '../keeping/shelves';
import type { ChoiceCommands } from '../song/choice-commands';
import type { HistoryCommands } from '../song/choosing';
import type { PlayCommands } from '../song/play-commands';
import type { FeatureCommands } from './features';

/** Everything the page can ask for, feature by feature. */
export type Commands = ChoiceCommands &
  HistoryCommands &
  PlayCommands &
  ShelfCommands &
  CopyCommands &
  BackupCommands &
  FeatureCommands;
