import { ruleSetSchema } from '../rule-set.ts';
import type { RuleSet, RuleSetData } from '../rule-set.ts';
import { carinthia1971TrackAndHaul, carinthia1971Tension } from './carinthia-1971.ts';
import { cfr30Part56 } from './cfr-30-part-56.ts';
import { cfr30Part57 } from './cfr-30-part-57.ts';
import { cfr30Part75 } from './cfr-30-part-75.ts';
import { cfr30Part77 } from './cfr-30-part-77.ts';
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
import { lockedCoilOuterWires } from './locked-coil-outer-wires.ts';
import { ropewayAreaItaly2016 } from './ropeway-area-italy-2016.ts';
import { vorarlberg2000Haul } from './vorarlberg-2000-haul.ts';
import { vorarlberg2000Tension } from './vorarlberg-2000-tension.ts';
import { vorarlberg2000TrackLocked } from './vorarlberg-2000-track-locked.ts';
import { vorarlberg2000TrackStranded } from './vorarlberg-2000-track-stranded.ts';

const shipped: readonly RuleSetData[] = [
  carinthia1971TrackAndHaul,
  carinthia1971Tension,
  cfr30Part56,
  cfr30Part57,
  cfr30Part75,
  cfr30Part77,
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
  lockedCoilOuterWires,
  ropewayAreaItaly2016,
  vorarlberg2000Haul,
  vorarlberg2000Tension,
  vorarlberg2000TrackLocked,
  vorarlberg2000TrackStranded,
];

/** Every set that the program ships, checked against the schema as a user's own set is. */
export const RULE_SETS: readonly RuleSet[] = shipped.map((data) => ruleSetSchema.parse(data));
