import { ruleSetSchema } from '../rule-set.ts';
import type { RuleSet, RuleSetData } from '../rule-set.ts';
import { asmeB3019Cableways } from './asme-b30-19-cableways.ts';
import { asmeB30RotationResistant } from './asme-b30-rotation-resistant.ts';
import { asmeB30SixInALay } from './asme-b30-six-in-a-lay.ts';
import { asmeB30Standing } from './asme-b30-standing.ts';
import { asmeB30TwelveInALay } from './asme-b30-twelve-in-a-lay.ts';
import { austriaSmallRopewayInterval } from './austria-small-ropeway-interval.ts';
import { californiaMineHoist } from './california-mine-hoist.ts';
import { carinthia1971TrackAndHaul, carinthia1971Tension } from './carinthia-1971.ts';
import { cfr29RotationResistant } from './cfr-29-1926-1413-rotation-resistant.ts';
import { cfr29Running } from './cfr-29-1926-1413-running.ts';
import { cfr29Standing } from './cfr-29-1926-1413-standing.ts';
import { cfr30Part56 } from './cfr-30-part-56.ts';
import { cfr30Part57 } from './cfr-30-part-57.ts';
import { cfr30Part75 } from './cfr-30-part-75.ts';
import { cfr30Part77 } from './cfr-30-part-77.ts';
import { chinaCoalEndless } from './china-coal-endless.ts';
import { chinaCoalManRiding } from './china-coal-man-riding.ts';
import { chinaCoalMaterial } from './china-coal-material.ts';
import { chinaMetalMine } from './china-metal-mine.ts';
import { craneGb597286 } from './crane-gb-5972-86.ts';
import { en12927LockedCoil } from './en-12927-6-locked-coil.ts';
import { en12927Stranded } from './en-12927-6-stranded.ts';
import { hongKong211a } from './hong-kong-211a.ts';
import { hongKong265a } from './hong-kong-265a.ts';
import { iso4309CautiousCategory } from './iso-4309-cautious-category.ts';
import { iso4309ClassM5ToM8 } from './iso-4309-class-m5-m8.ts';
import { iso4309MultiLayerDrum } from './iso-4309-multi-layer-drum.ts';
import { iso4309MultiLayerSecondReprint } from './iso-4309-multi-layer-second-reprint.ts';
import { iso4309RotationResistantM5ToM8 } from './iso-4309-rotation-resistant-m5-m8.ts';
import { iso4309RotationResistantMultiLayer } from './iso-4309-rotation-resistant-multi-layer.ts';
import { iso4309RotationResistant } from './iso-4309-rotation-resistant.ts';
import { iso4309SingleLayerDrum } from './iso-4309-single-layer-drum.ts';
import { italyMines1959 } from './italy-mines-1959.ts';
import { lift6x19FibreCore } from './lift-6x19-fibre-core.ts';
import { lift8x19FibreCore } from './lift-8x19-fibre-core.ts';
import { liftNationalDiameter } from './lift-national-diameter.ts';
import { lockedCoilOuterWires } from './locked-coil-outer-wires.ts';
import { ontario854DrumHoist } from './ontario-854-drum-hoist.ts';
import { polandRopewayInterval, polandSurfaceLiftInterval } from './poland-ropeway-interval.ts';
import { quebecGuideRope } from './quebec-guide-rope.ts';
import { ropewayAreaItaly2016 } from './ropeway-area-italy-2016.ts';
import { russiaCoalFreightAndGuide } from './russia-coal-freight-and-guide.ts';
import { russiaCoalHoistBareVertical } from './russia-coal-hoist-bare-vertical.ts';
import { russiaCoalHoistInclined } from './russia-coal-hoist-inclined.ts';
import { russiaCoalHoistSteep } from './russia-coal-hoist-steep.ts';
import { russiaCoalHoistZincVertical } from './russia-coal-hoist-zinc-vertical.ts';
import { russiaPassengerRopeway } from './russia-passenger-ropeway.ts';
import { slingsGeneral, slingsRussia } from './slings-general.ts';
import { southAfrica1633 } from './south-africa-16-33.ts';
import { vorarlberg2000Haul } from './vorarlberg-2000-haul.ts';
import { vorarlberg2000Tension } from './vorarlberg-2000-tension.ts';
import { vorarlberg2000TrackLocked } from './vorarlberg-2000-track-locked.ts';
import { vorarlberg2000TrackStranded } from './vorarlberg-2000-track-stranded.ts';
import { washingtonCraneStrength } from './washington-crane-strength.ts';
import { washingtonScaffoldHoist } from './washington-scaffold-hoist.ts';

const shipped: readonly RuleSetData[] = [
  asmeB3019Cableways,
  asmeB30RotationResistant,
  asmeB30SixInALay,
  asmeB30Standing,
  asmeB30TwelveInALay,
  austriaSmallRopewayInterval,
  californiaMineHoist,
  carinthia1971TrackAndHaul,
  carinthia1971Tension,
  cfr29RotationResistant,
  cfr29Running,
  cfr29Standing,
  cfr30Part56,
  cfr30Part57,
  cfr30Part75,
  cfr30Part77,
  chinaCoalEndless,
  chinaCoalManRiding,
  chinaCoalMaterial,
  chinaMetalMine,
  craneGb597286,
  en12927LockedCoil,
  en12927Stranded,
  hongKong211a,
  hongKong265a,
  iso4309CautiousCategory,
  iso4309ClassM5ToM8,
  iso4309MultiLayerDrum,
  iso4309MultiLayerSecondReprint,
  iso4309RotationResistantM5ToM8,
  iso4309RotationResistantMultiLayer,
  iso4309RotationResistant,
  iso4309SingleLayerDrum,
  italyMines1959,
  lift6x19FibreCore,
  lift8x19FibreCore,
  liftNationalDiameter,
  lockedCoilOuterWires,
  ontario854DrumHoist,
  polandRopewayInterval,
  polandSurfaceLiftInterval,
  quebecGuideRope,
  ropewayAreaItaly2016,
  russiaCoalFreightAndGuide,
  russiaCoalHoistBareVertical,
  russiaCoalHoistInclined,
  russiaCoalHoistSteep,
  russiaCoalHoistZincVertical,
  russiaPassengerRopeway,
  slingsGeneral,
  slingsRussia,
  southAfrica1633,
  vorarlberg2000Haul,
  vorarlberg2000Tension,
  vorarlberg2000TrackLocked,
  vorarlberg2000TrackStranded,
  washingtonCraneStrength,
  washingtonScaffoldHoist,
];

/** Every set that the program ships, checked against the schema as a user's own set is. */
export const RULE_SETS: readonly RuleSet[] = shipped.map((data) => ruleSetSchema.parse(data));
