/** The numbers by which the client library knows events. They are in no public typing. */
export const EVENT = {
  documentSelection: 2,
  worksheetChanged: 10,
  worksheetActivated: 11,
  worksheetDeactivated: 12,
  worksheetAdded: 13,
  worksheetSelection: 14,
  worksheetDeleted: 15,
  tableChanged: 101,
  tableAdded: 102,
  tableDeleted: 103,
} as const;

/** The category of all messages that are events. */
export const EVENT_CATEGORY = 65_536;
/** The target of events of the whole workbook. */
export const WHOLE_WORKBOOK = 'Workbook';

export const subscriptionKey = (type: number, target: string): string => `${type} ${target}`;
