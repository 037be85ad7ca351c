/** What somebody saw and measured on a body nobody could name. */
import type { Gender } from "./joint";
import type { Metres } from "./quantity";
import type { Thread } from "./thread";

/** One port as seen: what was measured, or the thread where somebody is sure of it. */
export interface SeenPort {
  readonly label: string;
  readonly diameter?: Metres | undefined;
  readonly pitch?: Metres | undefined;
  readonly gender?: Gender | undefined;
  readonly thread?: Thread | undefined;
  readonly side?: string | undefined;
}

export interface SeenBody {
  readonly ports: readonly SeenPort[];
  readonly place?: string | undefined;
  /** A wire goes to it. */
  readonly wire?: boolean | undefined;
}
