/** Whether a finding still counts: accepted for this car with a reason, or regraded or switched off by the shop. */
import type { Car } from "./car";
import type { Finding } from "./finding";
import type { Settings } from "./settings";

/**
 * Applies the car's own acceptances and the shop's rule settings. A stop is never switched, only accepted for one car with a reason.
 * The finding stays on the list either way, and says why it stands as it does.
 */
export function withStanding(found: Finding, car: Car, settings: Settings): Finding {
  const reason = car.accepted.get(found.code);
  if (reason !== undefined) return { ...found, standing: "accepted", because: `accepted for this car: ${reason}` };
  const grade = settings.rules.get(found.code);
  if (grade === undefined || grade === found.severity || found.severity === "stop") return found;
  if (grade === "off") return { ...found, standing: "off", because: `switched off in Settings; the rule says ${found.severity}` };
  return { ...found, severity: grade, because: `graded ${grade} in Settings; the rule says ${found.severity}` };
}
