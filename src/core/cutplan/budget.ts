/** How much work a search may do: counted, so that the same job always gets the same plan, with a clock of the caller's as a last resort. */

export interface Budget {
  readonly spend: (work: number) => void;
  readonly isOver: () => boolean;
}

/**
 * @param mostWork states visited; about 20 to 60 million a second on a desktop machine
 * @param shouldStop asked often; true ends the search at the next step
 */
export function budgetOf(mostWork: number, shouldStop: () => boolean = () => false): Budget {
  let [spent, stopped] = [0, false];
  return {
    spend: (work) => {
      spent += work;
    },
    isOver: () => (stopped ||= spent >= mostWork || shouldStop()),
  };
}

/** A part of a budget: over when its own share is spent or the whole is. */
export function shareOf(whole: Budget, mostWork: number): Budget {
  let spent = 0;
  return {
    spend: (work) => {
      spent += work;
      whole.spend(work);
    },
    isOver: () => spent >= mostWork || whole.isOver(),
  };
}
