import type { Session } from '../session/session.ts';

/** What the pane asks of a session. */
export type PaneSession = Pick<
  Session,
  | 'view'
  | 'subscribe'
  | 'readAgain'
  | 'planTreatment'
  | 'quote'
  | 'log'
  | 'draw'
  | 'redraw'
  | 'undo'
  | 'postCount'
  | 'carryOut'
  | 'freeze'
  | 'setUp'
  | 'upgradeTables'
  | 'writeAgain'
  | 'letGo'
  | 'finish'
  | 'drawChart'
  | 'carryOver'
  | 'goTo'
>;
