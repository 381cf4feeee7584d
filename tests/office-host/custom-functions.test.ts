import { describe, expect, test } from 'vitest';
import { bench, settle } from './bench.ts';

describe('custom functions, called by the host through the real library', () => {
  test('a value; a promise; an array of rows; the cell in which it stands', async () => {
    const { host, a } = bench();
    a.CustomFunctions.associate('TWICE', (value: number) => value * 2);
    a.CustomFunctions.associate('LATER', async (rows: number[][]) =>
      rows.map((row) => row.map((cell) => cell + 1)),
    );
    a.CustomFunctions.associate('WHERE', ({ address }: { address: string }) => address);
    expect(await host.callFunction('a', 'twice', [21]).first).toEqual({ kind: 'value', value: 42 });
    expect(await host.callFunction('a', 'LATER', [[[1, 2]]]).first).toEqual({
      kind: 'value',
      value: [[2, 3]],
    });
    expect(await host.callFunction('a', 'WHERE', [], { address: 'Stock!A1' }).first).toEqual({
      kind: 'value',
      value: 'Stock!A1',
    });
  });

  test("errors: thrown, rejected, of a kind of its own, and of a function that isn't there", async () => {
    const { host, a } = bench();
    const { Error: FunctionError, ErrorCode } = a.CustomFunctions;
    a.CustomFunctions.associate('THROWS', () => {
      throw new TypeError('made up');
    });
    a.CustomFunctions.associate('NONE', () => {
      throw new FunctionError(ErrorCode.notAvailable, 'no such lot');
    });
    a.CustomFunctions.associate('REJECTS', async () =>
      Promise.reject(new FunctionError(ErrorCode.invalidNumber)),
    );
    a.CustomFunctions.associate('GIVES', () => new FunctionError(ErrorCode.divisionByZero));
    const errorOf = async (name: string): Promise<unknown> => host.callFunction('a', name, []).first;
    expect(await errorOf('THROWS')).toMatchObject({ kind: 'error', error: '#VALUE!' });
    expect(await errorOf('NONE')).toEqual({ kind: 'error', error: '#N/A', message: 'no such lot' });
    expect(await errorOf('REJECTS')).toMatchObject({ kind: 'error', error: '#NUM!' });
    expect(await errorOf('GIVES')).toMatchObject({ kind: 'error', error: '#DIV/0!' });
    expect(await errorOf('NOTHING')).toMatchObject({ kind: 'error' });
  });

  test('a streaming function gives one result after another, until it is no longer needed', async () => {
    const { host, a } = bench();
    let give: ((value: number) => void) | undefined;
    let canceled = false;
    a.CustomFunctions.associate(
      'LEFT',
      (_lot: string, invocation: CustomFunctions.StreamingInvocation<number>) => {
        give = invocation.setResult;
        invocation.onCanceled = () => {
          canceled = true;
        };
        invocation.setResult(1);
      },
    );
    const values: unknown[] = [];
    const call = host.callFunction('a', 'LEFT', ['L-1'], {
      streaming: true,
      onOutcome: (outcome) => {
        values.push(outcome.kind === 'value' ? outcome.value : outcome.error);
      },
    });
    expect(await call.first).toEqual({ kind: 'value', value: 1 });
    give?.(2);
    await expect.poll(() => values).toEqual([1, 2]);
    call.cancel();
    await settle();
    expect(canceled).toBe(true);
    give?.(3);
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(call.outcomes).toHaveLength(2);
  });
});
