import {
  type BasketModel,
  type ModelSupplier,
  quantityConstraints,
  rowConstraints,
  smallestOrder,
  supplierConstraints,
  variablesOf,
} from './basket-programme.ts';
import type { IntegerProgramme, ProgrammeConstraint, ProgrammeVariable } from './integer-programme.ts';

/**
 * Where no basket holds everything: which needs must be left open, as few as can be, and which orders with something
 * set by hand stay below the supplier's smallest. What keeps a basket from holding is a smallest order that can't be
 * reached with what can be used.
 */
export function relaxedProgramme(model: BasketModel): IntegerProgramme {
  const { needs, rows, suppliers } = model;
  const leftOpen = suppliers.length + 1;
  const flags: ProgrammeVariable[] = [
    ...needs.map((_, index) => flag(openOf(index), leftOpen)),
    ...suppliers.filter(isByHand).map((supplier) => flag(belowOf(supplier), 1)),
  ];
  return {
    variables: [...variablesOf(model, new Map()), ...flags],
    constraints: [
      ...needs.flatMap((need, index) =>
        quantityConstraints(need, rows).map((each) =>
          each.relation === '>=' ? unless(each, openOf(index), each.bound) : each,
        ),
      ),
      ...rowConstraints(rows),
      ...suppliers.flatMap((supplier) => [
        ...smallestOrder(supplier).map((each) =>
          isByHand(supplier) ? unless(each, belowOf(supplier), supplier.minimumOrder) : each,
        ),
        ...supplierConstraints(supplier),
      ]),
    ],
  };
}

/** The model without what the relaxed programme gave up. */
export function relaxedModel(model: BasketModel, values: ReadonlyMap<string, number>): BasketModel {
  const settled = new Map(
    model.needs.map((need, index) => [
      need,
      values.get(openOf(index)) === 1 ? { ...need, covers: [] } : need,
    ]),
  );
  const rows = model.rows.map((row) => ({ ...row, need: settled.get(row.need) ?? row.need }));
  return {
    needs: [...settled.values()],
    rows,
    suppliers: model.suppliers.map((supplier) => ({
      ...supplier,
      rows: rows.filter(({ row }) => row.supplier === supplier.key),
      minimumOrder: values.get(belowOf(supplier)) === 1 ? 0 : supplier.minimumOrder,
    })),
  };
}

const openOf = (index: number): string => `open_${index}`;
const belowOf = ({ ordered }: ModelSupplier): string => `below_${ordered}`;
const isByHand = ({ rows }: ModelSupplier): boolean => rows.some(({ used }) => used === null);

const flag = (name: string, cost: number): ProgrammeVariable => ({
  name,
  cost,
  whole: true,
  least: 0,
  most: 1,
});

function unless(constraint: ProgrammeConstraint, variable: string, factor: number): ProgrammeConstraint {
  return { ...constraint, terms: [...constraint.terms, { variable, factor }] };
}
