import type { PedalTrack } from './pedal-track.js';

/** What the wires of one track are at: null for a wire that is open. */
export interface TrackWires {
  readonly supplyV: number | null;
  readonly groundV: number | null;
  readonly signalOpen: boolean;
  /** What the signal is shorted to, in V; null for none. */
  readonly shortV: number | null;
}

/** Both tracks' wires, and which of them are one. */
export interface PedalWires {
  readonly first: TrackWires;
  readonly second: TrackWires;
  /** Supply and ground are one wire each for both tracks. */
  readonly shared: boolean;
  readonly signalsTogether: boolean;
}

/** Volts at both inputs; null where nothing holds one. */
export type PinVolts = readonly [first: number | null, second: number | null];

/** Volts behind a conductance; one of 0 is not there. */
interface Source {
  readonly emfV: number;
  readonly perOhm: number;
}

const NONE: Source = { emfV: 0, perOhm: 0 };

/** Least resistance of a track beside its wiper: a contact. */
const CONTACT_OHM = 1e-3;

/**
 * Volts at both inputs. `shares` says which part of its supply each track gives. The pulls hang on the controller's own
 * supply and ground, whatever the pedal's wires are at. Every branch is joined to the next as volts behind a
 * conductance; where both tracks share a wire that is open, that wire stands where their currents add up to nought.
 */
export function pinVolts(
  tracks: readonly [PedalTrack, PedalTrack],
  shares: readonly [number, number],
  railV: number,
  wires: PedalWires,
): PinVolts {
  const [a, b] = tracks;
  const pulls = [pullsOf(a, railV), pullsOf(b, railV)] as const;
  const loose = wires.shared && (wires.first.supplyV === null || wires.first.groundV === null);
  const looseV = loose ? looseWire(tracks, shares, pulls, wires.first) : null;
  const given = [givenBy(a, shares[0], wires.first, looseV), givenBy(b, shares[1], wires.second, looseV)] as const;
  if (wires.signalsTogether) {
    const both = voltsOf(joined(joined(pulls[0], given[0]), joined(pulls[1], given[1])));
    return [both, both];
  }
  return [
    wires.first.shortV ?? voltsOf(joined(pulls[0], given[0])),
    wires.second.shortV ?? voltsOf(joined(pulls[1], given[1])),
  ];
}

function source(emfV: number, ohm: number | null): Source {
  return ohm === null ? NONE : { emfV, perOhm: 1 / ohm };
}

function joined(p: Source, q: Source): Source {
  const perOhm = p.perOhm + q.perOhm;
  return perOhm > 0 ? { emfV: (p.emfV * p.perOhm + q.emfV * q.perOhm) / perOhm, perOhm } : NONE;
}

function behind({ emfV, perOhm }: Source, ohm: number): Source {
  return perOhm > 0 ? { emfV, perOhm: 1 / (ohm + 1 / perOhm) } : NONE;
}

const voltsOf = ({ emfV, perOhm }: Source): number | null => (perOhm > 0 ? emfV : null);

function pullsOf(track: PedalTrack, railV: number): Source {
  const down = joined(source(0, track.pullDownOhm), source(0, track.inputOhm));
  return joined(source(railV, track.pullUpOhm), down);
}

const upperOhm = (resistanceOhm: number, share: number): number => Math.max(CONTACT_OHM, resistanceOhm * (1 - share));
const lowerOhm = (resistanceOhm: number, share: number): number => Math.max(CONTACT_OHM, resistanceOhm * share);

/** Where an open wire stands that both tracks share: a potentiometer feeds it through itself, an active output not. */
function looseWire(
  tracks: readonly [PedalTrack, PedalTrack],
  shares: readonly [number, number],
  pulls: readonly [Source, Source],
  { supplyV, groundV }: TrackWires,
): number | null {
  const branches = tracks.map((track, t) => {
    if (track.kind !== 'potentiometer') return NONE;
    const [upper, lower] = [upperOhm, lowerOhm].map((of) => of(track.resistanceOhm, shares[t] as number)) as [
      number,
      number,
    ];
    const pull = behind(pulls[t] as Source, track.seriesOhm);
    if (supplyV === null) return behind(joined(source(groundV ?? 0, lower), pull), upper);
    return behind(joined(source(supplyV, upper), pull), lower);
  });
  return voltsOf(joined(branches[0] as Source, branches[1] as Source));
}

/** What a track gives to its input. */
function givenBy(
  track: PedalTrack,
  share: number,
  { supplyV, groundV, signalOpen }: TrackWires,
  looseV: number | null,
): Source {
  if (signalOpen) return NONE;
  if (track.kind === 'potentiometer') {
    const [high, low] = [supplyV ?? looseV, groundV ?? looseV];
    const above = high === null ? NONE : source(high, upperOhm(track.resistanceOhm, share));
    const below = low === null ? NONE : source(low, lowerOhm(track.resistanceOhm, share));
    return behind(joined(above, below), track.seriesOhm);
  }
  if (supplyV !== null && groundV !== null) return source(groundV + (supplyV - groundV) * share, track.seriesOhm);
  if (supplyV !== null && track.lostGround === 'to-supply') return source(supplyV, track.seriesOhm);
  if (groundV !== null && track.lostSupply === 'to-ground') return source(groundV, track.seriesOhm);
  return NONE;
}
