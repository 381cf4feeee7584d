/**
 * Whether a formula is one that the program takes. Only its shape is looked at: operands and operators in turn,
 * brackets and quotes in pairs. What the functions and names in it mean isn't known here.
 */

const TOKEN =
  /\s*(?:(?<text>"(?:[^"]|"")*")|(?<number>\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?)(?![\p{L}_\d:!])|(?<error>#[A-Z/0!?]+)|(?<name>(?:(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?[$\p{L}_\\][$\p{L}\p{N}_.\\]*(?:\[(?:[^[\]]|\[[^\]]*\])*\])?|(?:(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?\$?\d+:\$?\d+|\[(?:[^[\]]|\[[^\]]*\])*\])(?<hash>#)?|(?<operator><=|>=|<>|[-+*/^&=<>:])|(?<percent>%)|(?<at>@)|(?<open>[({])|(?<close>[)}])|(?<separator>[,;]))/iuy;

const isReference = (name: string): boolean => /^\$?[a-z]{1,3}\$?\d+$/i.test(name);

/** Says whether a formula, given with its equals sign, is well formed. */
export function isFormula(formula: string): boolean {
  const text = formula.slice(1).trimEnd();
  const open: ('call' | 'group')[] = [];
  let wantsOperand = true;
  let before = '';
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const start = TOKEN.lastIndex;
    const groups = TOKEN.exec(text)?.groups;
    if (!groups) return false;
    const {
      text: quoted,
      number,
      error,
      name,
      operator,
      percent,
      at,
      open: opening,
      close,
      separator,
    } = groups;
    const operand = quoted ?? number ?? error ?? name;
    if (operand !== undefined) {
      // Two references side by side are the cells that they share; two words are not.
      const shared = isReference(before) && isReference(operand) && /\s/.test(text.charAt(start));
      if (!wantsOperand && !shared) return false;
      wantsOperand = false;
      before = operand;
      continue;
    }
    if (opening !== undefined) {
      const isCall = opening === '(' && !wantsOperand && before !== '' && text.charAt(start) === '(';
      if (!wantsOperand && !isCall) return false;
      open.push(isCall ? 'call' : 'group');
      wantsOperand = true;
    } else if (close !== undefined) {
      const kind = open.pop();
      const empty = wantsOperand && kind === 'call';
      if (kind === undefined || (wantsOperand && !empty)) return false;
      wantsOperand = false;
    } else if (separator !== undefined) {
      // An argument may be left out: IF(A1,,2).
      if (open.length === 0 || (wantsOperand && open.at(-1) !== 'call')) return false;
      wantsOperand = true;
    } else if (percent !== undefined) {
      if (wantsOperand) return false;
    } else if (at !== undefined) {
      if (!wantsOperand) return false;
    } else if (operator !== undefined) {
      if (wantsOperand && operator !== '-' && operator !== '+') return false;
      wantsOperand = true;
    }
    before = '';
  }
  return !wantsOperand && open.length === 0;
}
