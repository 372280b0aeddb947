/**
 * Relations whose check in `test/reference` is not declared with the ledger yet, by the test file that holds it or should.
 * It only shrinks: the rule fails if one of them has a declaration.
 */
export const NOT_YET: Readonly<Record<string, readonly string[]>> = {};
