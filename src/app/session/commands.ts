import type { ChartCommands } from '../charts/charts';
import type { TakeAwayCommands } from '../export/export';
import type { CopyCommands } from '../keeping/kept-copies';
import type { ShelfCommands } from '../keeping/shelves';
import type { NewerVersionCommands } from '../offline/newer-version';
import type { ChoiceCommands } from '../song/choice-commands';
import type { PlayCommands } from '../song/play-commands';
import type { OwnSoundCommands } from '../soundfont/soundfont';
import type { StageCommands } from '../stage/stage';
import type { WarmUpCommands } from '../warm-up/warm-up-run';

/** Everything the page can ask for, feature by feature. */
export type Commands = ChoiceCommands &
  PlayCommands &
  ShelfCommands &
  ChartCommands &
  CopyCommands &
  TakeAwayCommands &
  OwnSoundCommands &
  NewerVersionCommands &
  StageCommands &
  WarmUpCommands;
