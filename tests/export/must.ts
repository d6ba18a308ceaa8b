import type { Result } from '../../src/core/result';

/** The value, or a failure that says the problem. */
export function must<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(`${result.problem.field}: ${result.problem.says}`);
  return result.value;
}
