import type { BuyNeed } from '../buying/basket-problem.ts';
import type { Day } from '../day.ts';
import type { Forecast } from '../forecast/choose-forecast.ts';
import type { OrderLevel } from '../forecast/order-level.ts';
import type { MakePlan } from '../make-plan/make-plan.ts';
import type { JobAnswer } from '../projection/job-readiness.ts';
import type { Projection } from '../projection/projection.ts';
import type { YearAhead } from './year-ahead.ts';

/** What planning says, as plain values; quantities in the material's stock unit, money in coins. */
export interface PlanAnswer {
  readonly today: Day;
  readonly until: Day;
  readonly materials: readonly MaterialPlan[];
  readonly jobs: readonly JobAnswer[];
  /** What should be bought now; nothing of what is made here. */
  readonly needs: readonly BuyNeed[];
  /** What could be bought as well, though nothing asks for it now: of it only what is set by hand is bought. */
  readonly besides: readonly BuyNeed[];
  readonly year: YearAhead;
}

export interface MaterialPlan {
  readonly material: string;
  readonly unit: string;
  /** Usable today. */
  readonly usable: number;
  readonly onOrder: number;
  readonly forecast: Forecast;
  readonly level: OrderLevel;
  readonly projection: Projection;
  /** Where it is made here and something is needed of it. */
  readonly make: MakePlan | null;
}
