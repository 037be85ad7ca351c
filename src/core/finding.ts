/** The closed list of findings: code, severity, sentence, cure, basis. The panel, the sheet, the tests and the docs all read it here. */

export const SEVERITIES = ["stop", "decide", "watch", "note"] as const;
export type Severity = (typeof SEVERITIES)[number];

/** What a rule rests on. */
export type Basis = "common practice, no source" | "statics: pressure is the same everywhere in a line at rest" | `${string}`;

interface Entry {
  readonly severity: Severity;
  /** When the rule fires, in one clause; for the reference page. */
  readonly when: string;
  /** What happens on the road. */
  readonly effect: string;
  readonly cure: string;
  readonly basis: Basis;
}

const PRACTICE = "common practice, no source";
const J512 = "SAE J512: a 45° inverted flare and other forms are separate connections (scope seen, dimensions from memory)";
const SERIES = "statics: of two valves in series the second works on what the first lets through";

const BALANCE = "statics of the axles with the figures entered (docs/equations.md)";
const PEDAL = "lever, booster and master with the figures entered, against the rule chosen in Settings (docs/equations.md)";
const VOLUMES = "volumes of brakes, hoses, lines and fluid with the figures entered (docs/equations.md)";

export const findingEntries = {
  // joining
  "thread-mismatch": {
    severity: "stop", when: "no nut or adapter chain joins the two ends", effect: "the line cannot be joined here",
    cure: "use another port, another tube, or have an end made up", basis: "ASME B1.1, ISO 965: threads of different diameter or pitch do not assemble",
  },
  "thread-near-miss": {
    severity: "stop", when: "the nut found starts in the port's thread without being it", effect: "the nut starts, then strips or leaks under pressure",
    cure: "measure the pitch and fit the nut of the port's own thread", basis: "ASME B1.1, ISO 965: limits of size of the two threads",
  },
  "seat-mismatch": {
    severity: "stop", when: "the thread fits and the seat does not", effect: "the joint threads up but leaks under pressure",
    cure: "match the form of the flare to the seat, or fit an adapter that changes it", basis: J512,
  },
  "tube-nut-mismatch": {
    severity: "stop", when: "nuts for this port exist, but none is bored for this tube", effect: "a nut of the wrong bore lets the flare break off",
    cure: "run the tube size the port takes, or a nut bored for this tube", basis: PRACTICE,
  },
  "port-left-open": {
    severity: "stop", when: "a line port has nothing on it", effect: "fluid leaves at the first press of the pedal", cure: "plug it or plumb it", basis: PRACTICE,
  },
  "switch-port-open": {
    severity: "decide", when: "a switch port has neither switch nor plug", effect: "it leaks, or the warning lamp never lights", cure: "fit a switch or a plug", basis: PRACTICE,
  },
  "outlet-shortage": {
    severity: "decide", when: "more branches are needed than there are outlets, and no tee is listed", effect: "the car cannot be plumbed as listed",
    cure: "add a tee; one is proposed here with its price", basis: PRACTICE,
  },
  "circuit-unfed": { severity: "stop", when: "no line reaches a wheel", effect: "there is no brake on this wheel", cure: "list the valve or outlet that feeds it", basis: PRACTICE },
  "outlets-crossed": {
    severity: "stop", when: "a master outlet of one circuit is joined to the other circuit's inlet", effect: "the valves work on the wrong axle",
    cure: "cross the lines back", basis: PRACTICE,
  },
  "flow-reversed": {
    severity: "stop", when: "a valve with an arrow is fed through its outlet", effect: "no pressure gets past it, or it does nothing", cure: "turn it round", basis: PRACTICE,
  },
  "joint-count": {
    severity: "watch", when: "an adapter chain on one end is longer than the Settings allow", effect: "each joint is one more place to leak",
    cure: "have the end made up", basis: PRACTICE,
  },
  // bending
  "bend-below-least-radius": {
    severity: "stop", when: "the bend radius of Settings is below the least of the tube", effect: "the wall thins and the bore flattens or kinks, and the line gives way there",
    cure: "a larger die, or a tube that takes the radius", basis: "the tube's least bend radius as its row states it; a minor axis below 75 % of the diameter is refused (aviation practice)",
  },
  "bend-impossible": {
    severity: "decide", when: "bends at the ends of a straight overlap, a leg turns right back, or the points are one", effect: "the line cannot be made as measured",
    cure: "measure the points again, move the bends apart, or bend on a smaller die", basis: "geometry: a bend takes R tan(θ/2) of both its legs",
  },
  "straight-below-grip": {
    severity: "watch", when: "a straight is shorter than the bender's grip in Settings", effect: "the bender cannot hold the tube there, and the bend is made by hand or not true",
    cure: "move the bends apart, or bend this one by hand", basis: PRACTICE,
  },
  "point-without-bend": {
    severity: "note", when: "the legs before and after a point are in line, or the point stands twice", effect: "no bend is made there", cure: "take the point out, or measure it again", basis: "geometry",
  },
  // chain of functions
  "metering-doubled": {
    severity: "decide", when: "two hold-offs stand in one line", effect: "the fronts come in late, light stops fall to the rears, and bleeding is hard",
    cure: "take one of them out", basis: SERIES,
  },
  "metering-on-rear": {
    severity: "decide", when: "a hold-off stands in a rear line", effect: "the fronts work alone in light stops", cure: "move it to the front disc line", basis: PRACTICE,
  },
  "metering-on-drums": { severity: "watch", when: "an all-drum car has a hold-off", effect: "the fronts come in late for no reason", cure: "take it out", basis: PRACTICE },
  "metering-on-four-discs": {
    severity: "note", when: "a hold-off with discs at both ends", effect: "the fronts come in late", cure: "take it out unless the car's maker fitted it", basis: PRACTICE,
  },
  "metering-missing": {
    severity: "note", when: "front discs, rear drums, front/rear split and no hold-off", effect: "the nose dives and the fronts lock first in light, slippery stops",
    cure: "a combination valve with a hold-off section, or a hold-off valve in the front line", basis: PRACTICE,
  },
  "proportioning-doubled": {
    severity: "decide", when: "two proportioning sections stand one after the other in one line", effect: "their slopes multiply and the rears do almost nothing in a hard stop",
    cure: "take one out, or fit one that can be wound out", basis: SERIES,
  },
  "proportioning-one-sided": {
    severity: "stop", when: "a diagonal split has proportioning in one circuit only", effect: "one rear wheel locks first; the car pulls and can spin",
    cure: "fit a matched pair", basis: PRACTICE,
  },
  "proportioning-on-front": {
    severity: "stop", when: "a proportioning section stands in a line to a front wheel", effect: "above its split point the fronts are cut, so the rears lock first in hard stops",
    cure: "move it to the rear line", basis: "statics: less front pressure at the same rear pressure moves the balance rearward",
  },
  "proportioning-upstream-of-both": {
    severity: "stop", when: "one proportioning section feeds both axles", effect: "both axles are cut: the balance stays as it was and the pedal gets heavier",
    cure: "move it past the point where the axles part", basis: "statics: both axles see the valve's outlet pressure",
  },
  "residual-on-disc": {
    severity: "stop", when: "a drum residual stands in a line to a disc", effect: "the pads drag, heat and fade", cure: "a disc residual of about 2 psi (0.14 bar), or none", basis: PRACTICE,
  },
  "residual-shared": {
    severity: "stop", when: "one drum residual feeds discs and drums", effect: "the discs drag, heat and fade", cure: "put it in the drum branch only", basis: PRACTICE,
  },
  "residual-missing-drum": {
    severity: "watch", when: "a drum line has no drum residual and its wheel cylinders no cup expanders", effect: "air is drawn past the cups and the pedal sinks",
    cure: "a drum residual valve, or cups with expanders", basis: PRACTICE,
  },
  "residual-doubled": {
    severity: "decide", when: "two residuals stand in one line", effect: "the brakes drag", cure: "take one of them out", basis: PRACTICE,
  },
  "drum-master-on-disc": {
    severity: "stop", when: "a master outlet with a built-in drum residual feeds a disc", effect: "the pads drag, heat and fade, and no valve shows why",
    cure: "take the check valve out of the master, or fit a disc master", basis: PRACTICE,
  },
  "residual-order": {
    severity: "note", when: "a residual stands downstream of proportioning in one line", effect: "the proportioning works off the held pressure",
    cure: "put the residual nearest the master, unless the valve's maker says otherwise", basis: PRACTICE,
  },
  // as equipped
  "hose-missing": {
    severity: "stop", when: "a hard line meets a part that steers or moves with the axle", effect: "it bends at every bump and breaks",
    cure: "fit a hose, or state the rigid joint in Joins", basis: PRACTICE,
  },
  "compression-joint": { severity: "stop", when: "a compression fitting stands in a line", effect: "it can slip off under brake pressure", cure: "a flared end", basis: PRACTICE },
  "flare-single": { severity: "stop", when: "a single 45° flare was found on steel tube", effect: "it splits", cure: "a double or a bubble flare", basis: J512 },
  "material-copper": {
    severity: "stop", when: "the lines are plain copper", effect: "it work-hardens and cracks, and it is not allowed in many places", cure: "mild steel, copper-nickel or stainless", basis: PRACTICE,
  },
  "material-mixed": { severity: "note", when: "one car names several materials", effect: "looks and corrosion differ along the car", cure: "ask which lines are to be of which", basis: PRACTICE },
  "tube-reduced": { severity: "note", when: "one circuit runs in two tube sizes", effect: "it changes the flow, not the pressure", cure: "none needed; the joint between them must suit both", basis: "statics: pressure at rest does not depend on the bore" },
  "fluid-mixed": {
    severity: "stop", when: "silicone fluid goes with glycol fluid, or through an anti-lock unit", effect: "sludge and a soft pedal", cure: "one fluid, and the system flushed",
    basis: "49 CFR 571.116: DOT 5 is silicone, DOT 3, 4 and 5.1 are not (from memory)",
  },
  "reservoir-swapped": {
    severity: "decide", when: "the smaller chamber feeds the discs and the larger the drums", effect: "the reserve is gone before the pads are", cure: "swap the outlets, and check the casting", basis: PRACTICE,
  },
  "warning-missing": {
    severity: "decide", when: "two circuits and no differential-pressure or level switch", effect: "the first sign of a leak is the pedal", cure: "a switch and a lamp",
    basis: "49 CFR 571.105 S5.3.1 from the rule year in Settings (interpretation letters read)",
  },
  "stop-lamp-lost": { severity: "stop", when: "the hydraulic stop-lamp switch has lost its port and no other switch is listed", effect: "the stop lamps stay dark", cure: "a switch at the pedal, or a tee that takes one", basis: PRACTICE },
  "parking-brake-lost": { severity: "stop", when: "no brake on the car and no driveline brake is a parking brake", effect: "nothing holds the car when it stands", cure: "calipers with the mechanism, or a driveline brake", basis: PRACTICE },
  "anti-lock-present": { severity: "decide", when: "an anti-lock unit stands with added proportioning or hold-off", effect: "the unit already does it, and the two work against each other", cure: "take the valve out, or ask the unit's maker", basis: PRACTICE },
  "bleed-tool": { severity: "note", when: "a hold-off valve is in the circuit and the shop bleeds by pressure", effect: "the fronts will not bleed", cure: "hold the valve open with a tool while bleeding", basis: PRACTICE },
  // the physics
  "rear-locks-first": {
    severity: "decide", when: "the rears use more adhesion than the fronts somewhere from 0.15 g (or where the hold-off is fully open) to 0.80 g: stop on a conversion where even the least brake factor does it, watch on a car as built",
    effect: "the rears lock first and the car spins", cure: "a lower split point or slope, or smaller rear cylinders", basis: BALANCE,
  },
  "proportioning-missing": {
    severity: "decide", when: "front discs, rear drums and no proportioning; a note where the fronts lock first on every adhesion from 0.2 to 0.8", effect: "nothing cuts the rears in a hard stop, and they lock first",
    cure: "proportioning in the rear line", basis: BALANCE,
  },
  "rear-too-weak": { severity: "decide", when: "the fronts lock first and braking efficiency is below what Settings ask for", effect: "the rears do too little, and stops are long", cure: "a higher split point or slope, or larger rear cylinders", basis: BALANCE },
  "valve-never-acts": {
    severity: "note", when: "the split point lies above the pressure that locks the fronts on the highest adhesion of Settings; watch where the rears lock first there", effect: "the valve is decoration",
    cure: "a lower split point", basis: BALANCE,
  },
  "burst-margin": {
    severity: "stop", when: "the pressure of the hardest stop, times the safety factor of Settings, is above where the tube yields", effect: "the tube swells and bursts", cure: "a thicker wall or a smaller tube",
    basis: "von Mises yield of a closed thick-walled tube (from memory)",
  },
  "drum-gain-uncertain": { severity: "watch", when: "the rears lock first at the high end of the drums' brake factor only", effect: "the balance is a band, not a number, and the rears lock first at one end of it", cure: "a larger margin: a lower split point or slope", basis: BALANCE },
  "residual-missing-low-master": {
    severity: "decide", when: "the reservoir is lower than the highest caliper and a disc line has no residual", effect: "fluid drains back, and the first pedal is long", cure: "a disc residual of about 2 psi (0.14 bar), or a higher reservoir",
    basis: "statics: fluid finds its level",
  },
  "booster-none-low-ratio": { severity: "decide", when: "no booster, a low pedal ratio, and more force than the rule allows for its stop", effect: "a foot cannot stop the car", cure: "a higher ratio, a smaller master bore, or a booster", basis: PEDAL },
  "pedal-force-high": { severity: "decide", when: "the rule's stop takes more pedal force than it allows", effect: "the pedal is too heavy", cure: "a smaller master bore, a higher ratio, or more assist", basis: PEDAL },
  "vacuum-short": { severity: "decide", when: "the rule's stop takes more vacuum than there is", effect: "assist runs out before the stop does", cure: "a reserve tank, a pump, a larger diaphragm, or hydraulic assist", basis: PEDAL },
  "volume-short": { severity: "stop", when: "a circuit takes up more than its stroke displaces in the hardest stop", effect: "the pedal goes to the floor", cure: "a larger bore or stroke, or smaller pistons", basis: VOLUMES },
  "travel-long": { severity: "decide", when: "pedal travel is above the share of Settings", effect: "it fails inspection where the model rule holds", cure: "a larger bore, or less clearance", basis: `${VOLUMES}; 49 CFR 570.5 for light vehicles (section from memory), a model rule: states decide` },
  "balance-not-checked": { severity: "note", when: "figures of the car are missing", effect: "the rules that need them were not applied", cure: "fill in the columns named", basis: "what the rows say" },
  // kits
  "kit-partial": { severity: "note", when: "the chosen set leaves runs uncovered", effect: "they are made from straight tube", cure: "quote the made-up runs listed", basis: "the set's own runs" },
  "kit-ambiguous": { severity: "decide", when: "more than one set fits what is known", effect: "the wrong set may be sent", cure: "ask the first open question", basis: "the line sets listed" },
  // the car as a whole
  "single-circuit": {
    severity: "note", when: "one chamber feeds every wheel", effect: "one leak takes all the brakes", cure: "a tandem master", basis: "49 CFR 571.105 S5.1.2 asks for two circuits from the rule year in Settings (from memory)",
  },
  // the row
  "data-missing": { severity: "decide", when: "the row leaves out what runs or joints depend on", effect: "this part of the answer is open", cure: "fill in the column named", basis: "what the row says" },
  "data-out-of-range": { severity: "decide", when: "a cell cannot be what it says", effect: "the cell was left out of the answer", cure: "correct the column named", basis: "what the row says" },
  "data-duplicate": { severity: "decide", when: "two rows have one name", effect: "answers cannot be told apart", cure: "give each car a name of its own", basis: "what the rows say" },
  "unknown-part": { severity: "decide", when: "the row names a part that Components lacks", effect: "its ports and contents are not known", cure: "add it to Components, or correct the name", basis: "what the row says" },
  "unknown-platform": { severity: "decide", when: "the row names a platform that Platforms lacks", effect: "its split and lengths are not known", cure: "add it to Platforms, or correct the name", basis: "what the row says" },
} as const satisfies Readonly<Record<string, Entry>>;

export type FindingCode = keyof typeof findingEntries;
export const findingCodes = Object.keys(findingEntries) as readonly FindingCode[];

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Component, port, circuit or wheel, as a fitter would point at it. */
  readonly place: string;
  /** What this car shows and what it leads to, in one sentence. */
  readonly says: string;
  readonly cure: string;
  readonly basis: string;
  /** Open findings count; accepted and switched-off ones are listed behind them. */
  readonly standing: "open" | "accepted" | "off";
  /** Why it stands or is graded other than the rule says. */
  readonly because?: string | undefined;
}

export interface FindingFacts {
  readonly place: string;
  /** What was seen on this car; the entry's effect follows it. */
  readonly seen: string;
  /** The whole sentence, where the entry's effect would add nothing. */
  readonly sentence?: string;
  readonly severity?: Severity;
  readonly cure?: string;
}

/** Makes a finding of the list: the facts are this car's, everything else stands in the list. */
export function finding(code: FindingCode, facts: FindingFacts): Finding {
  const entry: Entry = findingEntries[code];
  return {
    code,
    severity: facts.severity ?? entry.severity,
    place: facts.place,
    says: facts.sentence ?? `${capital(facts.seen)}: ${entry.effect}.`,
    cure: capital(facts.cure ?? entry.cure),
    basis: entry.basis,
    standing: "open",
  };
}

/** Worst first; the list's own order among equals, then place, so that the order never depends on the way here. */
export const byWorstFirst = (a: Finding, b: Finding): number =>
  Number(a.standing !== "open") - Number(b.standing !== "open") ||
    SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) || findingCodes.indexOf(a.code) - findingCodes.indexOf(b.code) || compareText(a.place, b.place);

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** A sentence with its end mark; what ends with one already, as a question, gets none more. */
export const ended = (text: string): string => (/[.?!]$/.test(text) ? text : `${text}.`);
