/** A field of a request that breaks a rule, with a sentence that continues its name. */
export interface FieldProblem {
  readonly field: string;
  readonly message: string;
}
