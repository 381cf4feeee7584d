import type { CallArguments, CallProblem, CallResult, FunctionName } from './evaluate-call.ts';
import { LiveAnswers } from './live-answers.ts';

/** The answers for the cells of the workbook that is open: whoever keeps its books publishes them here. */
export const liveAnswers = new LiveAnswers();

/** Problems that lie in what was asked; the others are figures that aren't there. */
const ASKED_WRONGLY: ReadonlySet<CallProblem> = new Set([
  'unknown name',
  'unknown unit',
  'bad quantity',
  'no conversion',
]);

/**
 * Shows the answer to a call in its cell, and each later one, until the cell takes the call back. Until the workbook
 * was read the cell shows what the spreadsheet shows of any call that is being worked out.
 */
export function showIn(
  invocation: CustomFunctions.StreamingInvocation<number>,
  name: FunctionName,
  args: CallArguments,
): void {
  invocation.onCanceled = liveAnswers.register(name, args, (result) =>
    invocation.setResult(cellValue(result)),
  );
}

/** A figure as it stands, and a problem as the spreadsheet's own error: #VALUE! or #N/A, with its message. */
function cellValue(result: CallResult): number | CustomFunctions.Error {
  if ('value' in result) return result.value;
  const { invalidValue, notAvailable } = CustomFunctions.ErrorCode;
  const code = ASKED_WRONGLY.has(result.error) ? invalidValue : notAvailable;
  return new CustomFunctions.Error(code, result.message);
}
