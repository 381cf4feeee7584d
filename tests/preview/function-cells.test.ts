import { describe, expect, it } from 'vitest';
import {
  evaluateCall,
  functionCall,
  readableFormula,
  storedFormula,
} from '../../src/preview/model/function-cells.ts';

describe('calls of our functions in cells', () => {
  it('are read with values and cells as arguments', () => {
    expect(functionCall(`JARLEAF.LEFT("say ""no""", -2.5,TRUE,,$B$7,'My tab'!C2)`)).toEqual({
      name: 'JARLEAF.LEFT',
      args: [
        { kind: 'value', value: 'say "no"' },
        { kind: 'value', value: -2.5 },
        { kind: 'value', value: true },
        { kind: 'value', value: null },
        { kind: 'cell', cell: { tab: null, name: 'B7' } },
        { kind: 'cell', cell: { tab: 'My tab', name: 'C2' } },
      ],
    });
    expect(functionCall('jarleaf.today()')).toEqual({ name: 'JARLEAF.TODAY', args: [] });
    expect(functionCall('_xldudf_JARLEAF_LEFT("x")')).toEqual(functionCall('JARLEAF.LEFT("x")'));
  });

  it.each([
    'SUM(A1:A2)',
    'JARLEAF.LEFT(A1:A2)',
    'JARLEAF.LEFT("x")*2',
    'JARLEAF.LEFT(SUM(1))',
    'OTHER.LEFT("x")',
    'JARLEAF.LEFT("x"',
  ])('%s is none that can be worked out here', (formula) => {
    expect(functionCall(formula)).toBe(null);
  });

  it('are stored under the name that files use, and read back', () => {
    const formula = 'JARLEAF.LEFT("JARLEAF.X")+1';
    expect(storedFormula(formula)).toBe('_xldudf_JARLEAF_LEFT("JARLEAF.X")+1');
    expect(readableFormula(storedFormula('JARLEAF.LEFT("x")'))).toBe('JARLEAF.LEFT("x")');
  });

  it('are given the values of cells; an error, and a cell that is not there, go through', () => {
    const evaluate = (name: string, args: readonly unknown[]) =>
      args[0] === 'bad' ? { error: '#N/A' } : `${name} ${JSON.stringify(args)}`;
    const answer = (formula: string) => {
      const call = functionCall(formula);
      if (!call) throw new Error('no call');
      return evaluateCall(call, evaluate, ({ name }) => {
        if (name === 'A1') return 5;
        return name === 'A2' ? { shown: '#DIV/0!' } : undefined;
      });
    };
    expect(answer('JARLEAF.F(A1,"x")')).toBe('JARLEAF.F [5,"x"]');
    expect(answer('JARLEAF.F("bad")')).toEqual({ shown: '#N/A' });
    expect(answer('JARLEAF.F(A2)')).toEqual({ shown: '#DIV/0!' });
    expect(answer('JARLEAF.F(A3)')).toEqual({ shown: '#REF!' });
  });
});
