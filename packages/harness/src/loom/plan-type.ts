import type { Check } from 'loomwright';
import type { Loom } from './schema.js';

// What `planLoom` answers. Everything that is made from a plan (sheets, drawings, tests) reads this and nothing else,
// so that no two of them can disagree. Lists are sorted by name; nothing depends on the order of the file.

/** How bad a finding is: `fail` must be mended, `warn` looked at, `note` known. */
export type Severity = 'fail' | 'warn' | 'note';

/** What a finding is about. */
export interface Subject {
  readonly kind: 'circuit' | 'wire' | 'bundle' | 'fuse' | 'channel' | 'relay' | 'ground' | 'box' | 'bus' | 'vehicle';
  /** Its name in the plan. */
  readonly name: string;
}

/** One finding: a limit that was judged, with its margin and what to do. */
export interface Finding {
  readonly severity: Severity;
  /** Stable word for the rule: `voltage-drop`, `conductor-temperature`, `unfused-length` … */
  readonly rule: string;
  readonly about: Subject;
  /** The whole sentence, with its numbers. */
  readonly message: string;
  /** Room left as a fraction of the limit; below 0 it is not met; null where there is no number. */
  readonly marginFraction: number | null;
  /** The check behind it, or null where it is no limit but a fact. */
  readonly check: Check | null;
  /** What mends it, in a sentence; null for a note that asks for nothing. */
  readonly cure: string | null;
}

/** What made a wire as thick as it is. `stock`: nothing, it is the thinnest in stock. `given`: the file says so. */
export type DecidedBy = 'drop' | 'heat' | 'protection' | 'mechanical' | 'terminal' | 'stock' | 'given';

/** What a wire is for; colours go by it. */
export type WireUse = 'feed' | 'load' | 'ground' | 'coil' | 'signal' | 'reference' | 'sensor ground' | 'bus' | 'charge';

/** An end of a wire: what it sits on, and where that is. */
export interface WireEnd {
  /** `front box 3`, `lift pump +`, `ground rear frame`, `pump relay 87` … */
  readonly at: string;
  readonly place: string;
}

/** One wire, from terminal to terminal. */
export interface PlannedWire {
  /** Number on its label, from 1, in the order of the list. */
  readonly number: number;
  /** Stable name: the circuit's, and which wire of it: `lift pump out`, `lift pump back`, `lift pump out 2`. */
  readonly name: string;
  readonly circuit: string;
  readonly use: WireUse;
  readonly from: WireEnd;
  readonly to: WireEnd;
  /** Names of the routes that it passes, in order; empty where both ends are in one place. */
  readonly route: readonly string[];
  /** Places that it passes, both ends among them. */
  readonly places: readonly string[];
  /** Length along the routes, in m. */
  readonly routeLengthM: number;
  /** Length to cut: with slack and ends, in m. */
  readonly lengthM: number;
  /** Length in m between its source and the first fuse that protects it, where that is none or further on; else 0. */
  readonly unfusedM: number;
  /** Size as the trade writes it; null where no size in stock is possible (then the circuit says why). */
  readonly size: string | null;
  readonly areaMm2: number | null;
  /** Diameter over the insulation, in mm; null where the type of wire does not come in the size. */
  readonly outerDiameterMm: number | null;
  readonly colour: string;
  /** What is printed on it. */
  readonly label: string;
  readonly decidedBy: DecidedBy;
}

/** One thing in the way of a circuit's current, in order from its source to the load and back. */
export interface PathElement {
  /** `lift pump fuse`, `lift pump relay contact`, `terminal at front box 3` … */
  readonly name: string;
  readonly kind: 'wire' | 'fuse' | 'relay' | 'switch' | 'channel' | 'terminal' | 'connector' | 'body' | 'joint';
  /** Before the load (`out`) or behind it (`back`). */
  readonly side: 'out' | 'back';
  /** Resistance in use, wires hot, in Ω. */
  readonly resistanceOhm: number;
  /** The same cold, at 20 °C: what an ohmmeter on a dead circuit would find. Null where not known. */
  readonly coldOhm: number | null;
  /** Name of the wire, where it is one. */
  readonly wire: string | null;
}

/** What protects a circuit. */
export type PlannedProtection =
  | { readonly kind: 'fuse'; readonly fuse: string }
  | { readonly kind: 'channel'; readonly channel: string }
  /** A device nearer to the source, by its name in `fuses` or `channels`. */
  | { readonly kind: 'upstream'; readonly name: string; readonly mayCarryA: number }
  | { readonly kind: 'none'; readonly because: string };

/** One circuit: a source, wires of one size, one end. A feeder, a load's feed and return, a strap, a coil, a sensor. */
export interface PlannedCircuit {
  /** The item's name for its own feed; `feeder NAME`, `strap NAME`, `coil NAME`, `sensor NAME` … for the others. */
  readonly name: string;
  readonly kind: 'load' | 'feeder' | 'strap' | 'coil' | 'sensor' | 'switch' | 'charge' | 'bus';
  /** The item, box, controller, ground … that it serves. */
  readonly serves: string;
  /** Electrical nodes at its two ends; see `PlannedState.nodes`. Null for wires that are not solved (signals, buses). */
  readonly nodes: {
    readonly from: string;
    readonly load: string;
    /** Behind the load, and where the way back ends; null for feeders and straps, which lead from `from` to `load`. */
    readonly back: string | null;
    readonly to: string | null;
  } | null;
  /** Names of its wires. None for a controller's own draw: its feeder and its ground wire are circuits of their own. */
  readonly wires: readonly string[];
  readonly path: readonly PathElement[];
  /** Size of all its wires; null where none in stock is possible, or there are no wires. */
  readonly size: string | null;
  readonly areaMm2: number | null;
  readonly decidedBy: DecidedBy;
  /** The rule in words, with the check that turned the next smaller size down. */
  readonly because: string;
  /** Largest current in A in any state, and in which; what the wire is judged by. */
  readonly currentA: number;
  readonly currentState: string | null;
  readonly peakA: number | null;
  readonly inrushA: number | null;
  /** Hottest air passed, in °C, and where. */
  readonly ambientTempC: number;
  readonly hottestPlace: string;
  /** Share of a single wire's current that it bears in the worst bundle passed, and the route of that bundle. */
  readonly bundleFactor: number;
  readonly bundleRoute: string | null;
  /** Current in A that the wire bears there; null where no size is possible. */
  readonly ampacityA: number | null;
  /** Copper temperature in °C that it reaches, at which its resistance is taken. */
  readonly conductorTempC: number | null;
  /** Volts lost in the feeders and straps that it shares with others, in its worst state. */
  readonly sharedDropV: number;
  /** Volts lost in its own path in that state. */
  readonly ownDropV: number | null;
  /** Most that it may lose in all, from battery to load and back; null for circuits judged otherwise. */
  readonly dropLimitV: number | null;
  readonly worstState: string | null;
  readonly protection: PlannedProtection;
  /** Every limit with its margin. */
  readonly checks: readonly Check[];
}

/** One position of a fuse box, or an in-line fuse. */
export interface PlannedFuse {
  /** `front box 3`, or `fuse of feeder front box`. */
  readonly name: string;
  /** Box and position; null for an in-line fuse. */
  readonly box: string | null;
  readonly position: number | null;
  readonly place: string;
  /** Key of the family. */
  readonly family: string;
  /** Rating in A; null for a spare position, and where none fits (then a finding says so). */
  readonly ratingA: number | null;
  /** The circuit that it protects; null for a spare. */
  readonly circuit: string | null;
  /** Typical resistance hot and cold in Ω; null where no figure is known. */
  readonly hotOhm: number | null;
  readonly coldOhm: number | null;
  /** Why this rating: the check with the least room. */
  readonly decidedBy: string | null;
  /** Largest current in A in any state. */
  readonly currentA: number;
  /** A short at the far end, hot and with a low battery, in A; null for a spare. */
  readonly farShortA: number | null;
  readonly checks: readonly Check[];
}

/** One output of a controller. */
export interface PlannedChannel {
  readonly name: string;
  readonly controller: string;
  readonly channel: string;
  /** Null for a spare. */
  readonly circuit: string | null;
  /** Trip current that it is to be set to, in A; null for a spare, and where none fits. */
  readonly settingA: number | null;
  readonly ratingA: number;
  readonly currentA: number;
  readonly checks: readonly Check[];
}

/** One relay. */
export interface PlannedRelay {
  /** `relay of fuel pump`. */
  readonly name: string;
  readonly type: string;
  readonly place: string;
  /** The circuit that its contact switches, and that of its coil. */
  readonly circuit: string;
  readonly coilCircuit: string;
  readonly control: string;
  /** Lowest volts of the states in which it must pull in, at its coil and its limit. */
  readonly coilV: number | null;
  readonly pickUpV: number | null;
  readonly checks: readonly Check[];
}

/** A stretch of trunk with the wires in it. */
export interface PlannedBundle {
  /** The route's name. */
  readonly route: string;
  readonly from: string;
  readonly to: string;
  readonly lengthM: number;
  /** Hottest air along it, in °C. */
  readonly ambientTempC: number;
  readonly wires: readonly string[];
  readonly wireCount: number;
  /** Wires that carry current in the state with most of them. */
  readonly currentCarryingCount: number;
  /** Share of the capacity of all of them that is in use in the worst state. */
  readonly loadedFraction: number;
  readonly loadedState: string | null;
  /** Diameter over it without sleeve, in mm, and the rule; null where nothing passes or a diameter is not known. */
  readonly diameterMm: number | null;
  /** Least factor of its wires by the named rule; 1 for an empty one. */
  readonly factor: number;
  readonly factorRule: string;
}

/** A way between two points of the grounds. */
export interface PlannedWay {
  /** Its circuit, or `ground NAME`, `body NAME to OTHER`, `stray NAME to OTHER`: the key of its current in a state. */
  readonly name: string;
  /** Points at its ends, as in `PlannedState.nodes`. */
  readonly from: string;
  readonly to: string;
  /**
   * `strap`, `cable` (of a battery) and `wire` (of a controller) are circuits. `body` has the joint of its stud in it,
   * unless a `joint` of its own leads from the stud to the metal. A `stray` way was not laid for current.
   */
  readonly kind: 'strap' | 'cable' | 'wire' | 'body' | 'joint' | 'stray';
  readonly circuit: string | null;
  readonly resistanceOhm: number;
  /** Current in A that it bears: of a circuit where it lies, of a stray way as the file gives it; else null. */
  readonly bearsA: number | null;
}

/** A ground point and its way to the next. */
export interface PlannedGround {
  readonly name: string;
  readonly place: string;
  readonly to: string | null;
  /** Its first way: by body, by a strap (whose circuit is named), or the root of all. Further ones are in `ways`. */
  readonly by: 'body' | 'strap' | 'root';
  readonly circuit: string | null;
  readonly jointOhm: number;
  /** From its stud to the next ground point, joint counted, in Ω; 0 for the root. */
  readonly resistanceOhm: number;
  /** Circuits that return here. */
  readonly circuits: readonly string[];
}

/** A way or circuit that carries more than it bears once another is lost. */
export interface Overload {
  /** Its name among the ways or circuits. */
  readonly name: string;
  /** Largest current in A, charging currents added on the safe side, and what flows with nothing lost. */
  readonly currentA: number;
  readonly intactA: number;
  readonly bearsA: number;
}

/** The ground of a sensor against that of its controller. */
export interface SensorShift {
  readonly circuit: string;
  /** In mV; null where one of both is cut off. */
  readonly offsetMv: number | null;
  /** How far that is from the offset with nothing lost. */
  readonly shiftMv: number | null;
}

/** What comes of losing one way of the grounds in one state. */
export interface LossInState {
  readonly state: string;
  /** Ground points, battery posts and controllers' grounds still tied to the root that move by 1 mV or more. */
  readonly shifts: readonly { readonly node: string; readonly shiftMv: number }[];
  /** Volts of what is cut off, where the way was, against the root: through loads. Null where nothing alive reaches it. */
  readonly islandV: number | null;
  readonly sensors: readonly SensorShift[];
  /** What carries more than it bears, and did not before, the worst first. */
  readonly overloads: readonly Overload[];
  /** Loads that are not cut off, and can no longer be fed. */
  readonly starved: readonly string[];
}

/** One way of the grounds lost: a stud loose, a strap off, a cable broken. */
export interface PlannedLoss {
  /** Its name among the ways. */
  readonly lost: string;
  /** Points that no metal ties to the root any more. */
  readonly cutOff: readonly string[];
  /** Circuits without a way back, and those of controllers that lost their ground. */
  readonly cutCircuits: readonly string[];
  readonly states: readonly LossInState[];
}

/** A sensor whose ground is not that of its controller. */
export interface PlannedSensorGround {
  readonly circuit: string;
  /** Points of its ground and of its controller's. */
  readonly node: string;
  readonly against: string;
  /** Volts of the first above the second in each state, in mV. */
  readonly states: readonly { readonly state: string; readonly offsetMv: number }[];
  /** What each load alone moves it by when it switches on, in mV, the most first. */
  readonly loads: readonly { readonly circuit: string; readonly currentA: number; readonly shiftMv: number }[];
}

/** What is fed although what feeds it is out. */
export interface PlannedSneak {
  /** The fuse that is out, the switch, relay, channel or isolator that is open, or the battery that is off. */
  readonly fault: string;
  readonly opened: 'fuse' | 'contact' | 'battery';
  /** The state with the most volts, and all in which it is so. */
  readonly state: string;
  readonly states: readonly string[];
  /** Points that are alive, the most volts first. */
  readonly points: readonly { readonly node: string; readonly voltageV: number }[];
  /** `wire`: by another wire, as it should be where both ends have a source. `loads`: back through coils or loads. */
  readonly by: 'wire' | 'loads';
  /** Where it is fed from, and through what, in order; empty where it is fed by wire. */
  readonly fedFrom: string | null;
  readonly path: readonly string[];
  /** Relays that stay in by it. */
  readonly relays: readonly string[];
}

/** Whether a load's feed is alive, state by state, with nothing wrong. */
export interface PlannedAlive {
  readonly circuit: string;
  /** Volts at its positive end against the root; null where it is dead. In the order of the states. */
  readonly voltsV: readonly (number | null)[];
}

/** Volts and current at one load in one state. */
export interface LoadInState {
  /** The circuit. */
  readonly circuit: string;
  readonly loadV: number;
  readonly currentA: number;
  /** Volts lost before it and behind it, from the battery's posts, feeders and straps counted. */
  readonly outDropV: number;
  readonly backDropV: number;
}

/** One state, solved. */
export interface PlannedState {
  readonly name: string;
  /** Volts at the posts of each battery: as the file gives them, or as they follow from its volts at rest. */
  readonly batteries: readonly { readonly name: string; readonly supplyV: number; readonly currentA: number }[];
  /** Volts of every node against the root of the grounds. */
  readonly nodes: Readonly<Record<string, number>>;
  /**
   * Current in A of every circuit that carries any, by its name; and of the ways of the grounds that are no circuits, by
   * theirs. Of a strap or way: positive towards its second point, so negative where it runs the other way.
   */
  readonly currents: Readonly<Record<string, number>>;
  /** Every load that is on. */
  readonly loads: readonly LoadInState[];
  /** Circuits whose own path could not feed their load, all else off; not counted in this state. */
  readonly starved: readonly string[];
  /** Circuits whose load has no stable operating point with what else runs; not counted in this state. */
  readonly unsettled: readonly string[];
}

/** What a meter should read, with everything as planned. */
export interface ExpectedReading {
  /** Stable name. */
  readonly name: string;
  /**
   * `posts`: volts of a battery. `volts`: across a load. `millivolts`: over a fuse, joint or strap with its current
   * flowing. `ground`: millivolts of a ground point above a battery's negative post. `amps`: in the place of a fuse.
   * `ohms`: dead.
   */
  readonly kind: 'posts' | 'volts' | 'millivolts' | 'ground' | 'amps' | 'ohms';
  /** Null where nothing needs to be on. */
  readonly state: string | null;
  /** The circuit, battery or ground point that it is about. */
  readonly circuit: string;
  /** The thing in its path that it is taken over, or null. */
  readonly part: string | null;
  /** Where the two probes go. */
  readonly probes: readonly [string, string];
  /** In V, mV, A or Ω by its kind; null where a resistance is not known, and `because` says so. */
  readonly value: number | null;
  /** The same with everything healthy as it may be built, loads 10 % off: see `TestPlan.basis`. Null without a figure. */
  readonly lowValue: number | null;
  readonly highValue: number | null;
  readonly because: string | null;
  /** Current in A while reading; 0 for a dead one. */
  readonly currentA: number;
}

/** A whole vehicle, planned. */
export interface LoomPlan {
  readonly vehicle: { readonly name: string; readonly note: string | null };
  /** The file that it was planned from. */
  readonly loom: Loom;
  readonly circuits: readonly PlannedCircuit[];
  readonly wires: readonly PlannedWire[];
  readonly bundles: readonly PlannedBundle[];
  readonly fuses: readonly PlannedFuse[];
  readonly channels: readonly PlannedChannel[];
  readonly relays: readonly PlannedRelay[];
  readonly grounds: readonly PlannedGround[];
  /** Every way between points of the grounds, battery posts and controllers' grounds among them. */
  readonly ways: readonly PlannedWay[];
  readonly states: readonly PlannedState[];
  /** Each way of the grounds lost in turn. */
  readonly losses: readonly PlannedLoss[];
  readonly sensorGrounds: readonly PlannedSensorGround[];
  readonly alive: readonly PlannedAlive[];
  readonly sneaks: readonly PlannedSneak[];
  readonly readings: readonly ExpectedReading[];
  /** Worst first, then by subject. */
  readonly findings: readonly Finding[];
  /** How often sizes, bundles and currents were gone through, the bound, and whether they agreed at the end. */
  readonly settled: { readonly rounds: number; readonly mostRounds: number; readonly agreed: boolean };
  /** What this plan does not look at, in sentences: to be said aloud wherever it is shown. */
  readonly notJudged: readonly string[];
}
