import type { Command } from './command.ts';
import { openFolder } from './commands/open-folder.ts';
import { closeFolder } from './commands/close-rope.ts';
import { analyseAgain } from './commands/analyse-again.ts';
import { stopWork } from './commands/stop-work.ts';
import { chooseRules } from './commands/choose-rules.ts';
import { showParameters } from './commands/show-parameters.ts';
import { takeBackDecision } from './commands/take-back.ts';
import { goRope } from './commands/go-rope.ts';
import { goPlaces } from './commands/go-places.ts';
import { goCriteria } from './commands/go-criteria.ts';
import { goLife } from './commands/go-life.ts';
import { goCompare } from './commands/go-compare.ts';
import { goSection } from './commands/go-section.ts';
import { goIntake } from './commands/go-intake.ts';
import { goReport } from './commands/go-report.ts';
import { zoomIn } from './commands/zoom-in.ts';
import { zoomOut } from './commands/zoom-out.ts';
import { wholeRope } from './commands/whole-rope.ts';
import { panLeft } from './commands/pan-left.ts';
import { panRight } from './commands/pan-right.ts';
import { cursorLeft } from './commands/cursor-left.ts';
import { cursorRight } from './commands/cursor-right.ts';
import { goToPosition } from './commands/go-to-position.ts';
import { formerView } from './commands/former-view.ts';
import { nextPlace } from './commands/next-place.ts';
import { formerPlace } from './commands/former-place.ts';
import { acceptPlace } from './commands/accept-place.ts';
import { setAsidePlace } from './commands/set-aside-place.ts';
import { relabelPlace } from './commands/relabel-place.ts';
import { addNote } from './commands/add-note.ts';
import { historyHere } from './commands/history-here.ts';
import { showCommands } from './commands/show-commands.ts';
import { showShortcuts } from './commands/show-shortcuts.ts';
import { showCautions } from './commands/show-cautions.ts';
import { switchTheme } from './commands/switch-theme.ts';

/** Every command, in the order in which the command list shows them. */
export const ALL_COMMANDS: readonly Command[] = [
  openFolder,
  closeFolder,
  analyseAgain,
  stopWork,
  chooseRules,
  showParameters,
  takeBackDecision,
  goRope,
  goPlaces,
  goCriteria,
  goLife,
  goCompare,
  goSection,
  goIntake,
  goReport,
  zoomIn,
  zoomOut,
  wholeRope,
  panLeft,
  panRight,
  cursorLeft,
  cursorRight,
  goToPosition,
  formerView,
  nextPlace,
  formerPlace,
  acceptPlace,
  setAsidePlace,
  relabelPlace,
  addNote,
  historyHere,
  showCommands,
  showShortcuts,
  showCautions,
  switchTheme,
];
