/**
 * The pressure in a main under which most state primacy agencies ask whether the water is still safe, psi. Common rule
 * of state primacy agencies and the Ten States Standards (8.2.1), from memory; the local rule decides.
 */
export const QUESTION_BELOW_PSI = 20;
