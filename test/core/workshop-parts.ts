/**
 * The parts that most tests use, in the notation of part-notation.ts. Threads of the tandem master, the early block, the hold-off valve
 * and the later combination valve follow common practice, no source; everything else is invented to go with them.
 */
export const workshopParts: readonly string[] = [
  // masters
  "MC master @master price=90 | >F front 1/2-20 | >R rear 9/16-18",
  "MC-DRUM master @master | >F front 1/2-20 residual=10 | >R rear 9/16-18 residual=10",
  "MC-REAR10 master @master | >F front 1/2-20 | >R rear 9/16-18 residual=10",
  "MC-COLUMN10 master @master residual=10 | >F front 1/2-20 | >R rear 9/16-18",
  "MC-DISC2 master @master | >F front 1/2-20 residual=2 | >R rear 9/16-18",
  "MC-ONE master @master | >OUT 3/8-24",
  "MC-X2 master @master | >P 1 3/8-24 | >S 2 3/8-24",
  "MC-X4 master @master | >P1 1 LF 3/8-24 | >P2 1 RR 3/8-24 | >S1 2 RF 3/8-24 | >S2 2 LR 3/8-24",
  // blocks and combination valves
  "BLK distribution-block @valve price=40 | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24",
  "BLK-SW distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | >SW 1/8-27NPT pipe-taper switch",
  "BLK-4 distribution-block @valve | <IN 3/8-24 | >L LF 3/8-24 | >R RF 3/8-24 | >B rear 3/8-24",
  "CV combination-valve @valve price=80 arrow=yes | <FI front 1/2-20 | <RI rear 9/16-18 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | FI>L hold-off opens=80 | FI>R hold-off opens=80 | RI>RO proportioning split=350 slope=0.4",
  "CV-NOHOLD combination-valve @valve | <FI front 1/2-20 | <RI rear 9/16-18 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | FI>L through | FI>R through | RI>RO proportioning split=350 slope=0.4",
  "CV-GUTTED combination-valve @valve | <FI front 1/2-20 | <RI rear 9/16-18 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24 | FI>L hold-off opens=80 | FI>R hold-off opens=80 | RI>RO through",
  "CV-UNKNOWN combination-valve @valve | <FI front 1/2-20 | <RI rear 9/16-18 | >L front LF 3/8-24 | >R front RF 3/8-24 | >RO rear 7/16-24",
  // valves
  "HO hold-off-valve @valve price=60 arrow=yes | <IN front 7/16-24 | >OUT front 7/16-24 | IN>OUT hold-off opens=80",
  "HO-ANY hold-off-valve @valve | <IN 7/16-24 | >OUT 7/16-24 | IN>OUT hold-off opens=80",
  "PV proportioning-valve @frame-mid price=70 arrow=yes | <IN rear 7/16-24 | >OUT rear 7/16-24 | IN>OUT proportioning split=350 slope=0.4",
  "PV-ANY proportioning-valve @valve arrow=yes | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT proportioning split=350 slope=0.4",
  "APV adjustable-proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT adjustable-proportioning slope=0.43",
  "LSV proportioning-valve @axle-tee | <IN rear 3/8-24 | >OUT rear 3/8-24 | IN>OUT load-sensing-proportioning split=200 slope=0.3",
  "LIM proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT limiting split=400",
  "RV10 residual-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT residual holds=10",
  "RV2 residual-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT residual holds=2",
  "MYSTERY proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT ?",
  "ABS4 anti-lock-unit @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >LF front LF 3/8-24 | >RF front RF 3/8-24 | >LR rear LR 3/8-24 | >RR rear RR 3/8-24 | FI>LF through | FI>RF through | RI>LR through | RI>RR through",
  "UN union @frame-mid price=4 | <A 3/8-24 | >B 3/8-24",
  "SW switch | >T 1/8-27NPT pipe-taper male",
  "SW-LEVEL switch",
  "SW-CAP switch | >T 3/4-16 o-ring male",
  // tees
  "TEE tee @axle-tee price=9 | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24",
  "TEE-F tee @valve price=11 | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24",
  // hoses
  "HF hose @front price=12 | <IN 3/8-24 | >OUT 7/16-20 banjo",
  "HR hose @rear-hose price=15 | <IN 3/8-24 | >OUT 3/8-24 male",
  "HR2 hose @rear price=13 | <IN 3/8-24 | >OUT 3/8-24 male",
  "HRT hose @rear-hose price=18 | <IN 3/8-24 | >OL LR 3/8-24 | >OR RR 3/8-24",
  // wheel brakes
  "DF disc parking=no | <IN 7/16-20 banjo", "DR disc parking=yes | <IN 3/8-24",
  "WF drum expanders=yes parking=no | <IN 7/16-20 banjo", "WR drum expanders=yes parking=yes | <IN 3/8-24", "WR-BARE drum expanders=no parking=yes | <IN 3/8-24", "WR-SILENT drum parking=yes | <IN 3/8-24",
];
