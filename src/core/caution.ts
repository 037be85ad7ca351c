/** The caution that every quote and every answer about a car's brakes carries. */
export const CAUTION =
  "Figures are estimates from the data entered. A qualified person inspects and tests the car; local codes and the maker's service data come first; pressure-test and bleed before driving.";
