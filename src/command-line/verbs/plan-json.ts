import type { PlacedNotice } from '../../actions/check-workbook.ts';
import { isoDay } from '../../core/day.ts';
import type { MakeCost, MakePlan, OtherWay } from '../../core/make-plan/make-plan.ts';
import type { Currency } from '../../core/money.ts';
import type { MaterialPlan, PlanAnswer } from '../../core/planning/plan-answer.ts';
import type { YearAhead } from '../../core/planning/year-ahead.ts';
import type { JobAnswer } from '../../core/projection/job-readiness.ts';
import type { ProjectedDay } from '../../core/projection/projection.ts';
import { currencyCode, day, noticesJson } from '../answers-json.ts';
import { plannedMoney, plannedMoneyOrNull, plannedNumber } from '../plan-words.ts';

/** A plan as other programs read it: quantities in the material's stock unit. */
export function planJson(answer: PlanAnswer, currency: Currency, notices: readonly PlacedNotice[]) {
  return {
    asOf: isoDay(answer.today),
    until: isoDay(answer.until),
    currency: currencyCode(currency),
    materials: answer.materials.map((each) => materialJson(each, currency)),
    jobs: answer.jobs.map(jobJson),
    year: yearJson(answer.year, currency),
    notices: noticesJson(notices),
  };
}

function materialJson(plan: MaterialPlan, currency: Currency) {
  const { forecast, level, projection } = plan;
  return {
    material: plan.material,
    unit: plan.unit,
    usable: plannedNumber(plan.usable),
    onOrder: plannedNumber(plan.onOrder),
    demand: {
      class: forecast.demandClass,
      method: forecast.method,
      weight: forecast.weight,
      perWeek: plannedNumber(forecast.perWeek),
      meanInterval: forecast.meanInterval,
      sizeVariation: forecast.sizeVariation,
      because: forecast.sentence,
    },
    orderWhenDownTo: {
      level: plannedNumber(level.level),
      planned: plannedNumber(level.planned),
      forUnplanned: plannedNumber(level.forUnplanned),
      plain: plannedNumber(level.plain),
      servicePercent: level.servicePercent,
      serviceMeans: level.measure,
      because: level.sentence,
    },
    firstShort:
      projection.firstShort === null
        ? null
        : {
            day: isoDay(projection.firstShort.day),
            missing: plannedNumber(projection.firstShort.missing),
            job: projection.firstShort.job,
          },
    goesOff: projection.goesOff.map(({ lot, goodUntil, quantity, worth }) => ({
      lot,
      goodUntil: isoDay(goodUntil),
      quantity: plannedNumber(quantity),
      worth: plannedMoneyOrNull(worth, currency),
    })),
    days: projection.days.map(dayJson),
    make: plan.make === null ? null : makePlanJson(plan.make, currency),
  };
}

function yearJson({ materials, suppliers }: YearAhead, currency: Currency) {
  return {
    materials: materials.map((each) => ({
      material: each.material,
      unit: each.unit,
      quantity: plannedNumber(each.quantity),
      value: plannedMoney(each.value, currency),
      percent: each.percent,
      class: each.valueClass,
      atATime:
        each.atATime === null
          ? null
          : {
              supplier: each.atATime.supplier,
              quantity: plannedNumber(each.atATime.quantity),
              ordersPerYear: each.atATime.ordersPerYear,
              yearlyCost: plannedMoney(each.atATime.yearlyCost, currency),
            },
    })),
    suppliers: suppliers.map(({ supplier, ways }) => ({
      supplier,
      alone: plannedMoney(ways.alone.yearlyCost, currency),
      together: plannedMoney(ways.together.yearlyCost, currency),
      ordersPerYear: ways.together.materials[0]?.ordersPerYear ?? null,
    })),
  };
}

function dayJson({ day: on, usable, planned, forecast, arrived, made, wentOff, short }: ProjectedDay) {
  return {
    day: isoDay(on),
    usable: plannedNumber(usable),
    planned: plannedNumber(planned),
    forecast: plannedNumber(forecast),
    arrived: plannedNumber(arrived),
    made: plannedNumber(made),
    wentOff: plannedNumber(wentOff),
    short: plannedNumber(short),
  };
}

/** When to make how much, and the two other ways beside it. */
export function makePlanJson(plan: MakePlan, currency: Currency) {
  return {
    material: plan.material,
    recipe: plan.recipe,
    batches: plan.batches.map((batch) => ({
      makeOn: isoDay(batch.makeOn),
      readyOn: isoDay(batch.readyOn),
      goodUntil: day(batch.goodUntil),
      quantity: plannedNumber(batch.quantity),
      waste: plannedNumber(batch.waste),
      for: batch.servings.map((serving) => ({
        day: isoDay(serving.day),
        job: serving.job,
        treatment: serving.what,
        quantity: plannedNumber(serving.quantity),
      })),
    })),
    cost: costJson(plan.cost, currency),
    forEachJob: otherWayJson(plan.forEachJob, currency),
    weekly: otherWayJson(plan.weekly, currency),
    late: plan.late.map((serving) => ({
      day: isoDay(serving.day),
      job: serving.job,
      treatment: serving.what,
      quantity: plannedNumber(serving.quantity),
      readyOn: isoDay(serving.readyOn),
    })),
  };
}

function costJson({ batches, minutes, effort, waste, wasteCost }: MakeCost, currency: Currency) {
  return {
    batches,
    minutes: plannedNumber(minutes),
    effort: plannedMoneyOrNull(effort, currency),
    waste: plannedNumber(waste),
    wasteCost: plannedMoneyOrNull(wasteCost, currency),
  };
}

function otherWayJson({ cost, unserved }: OtherWay, currency: Currency) {
  return { ...costJson(cost, currency), unserved: unserved.map((on) => isoDay(on)) };
}

function jobJson({ job, due, readyOn, canBeDone, wants, obstacles }: JobAnswer) {
  return {
    job,
    due: day(due),
    readyOn: day(readyOn),
    canBeDone,
    wants: wants.map((want) => ({
      material: want.material,
      unit: want.unit,
      day: isoDay(want.day),
      missing: plannedNumber(want.missing),
      how: want.how,
      supplier: want.supplier,
      latestBy: day(want.latestBy),
      tooLate: want.tooLate,
      onItsWay: day(want.onItsWay),
    })),
    obstacles,
  };
}
