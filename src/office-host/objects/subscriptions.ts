import { subscriptionKey } from '../message-types.ts';
import type { RequestSession } from './object-kind.ts';

type Method<Subject> = (subject: Subject, args: readonly unknown[], session: RequestSession) => null;

/**
 * The methods by which the client library asks for events, and asks no longer.
 * @param events their names in the library's own methods, such as DataChanged, and their numbers
 */
export function subscriptions<Subject>(
  target: (subject: Subject) => string,
  events: Readonly<Record<string, number>>,
): Record<string, Method<Subject>> {
  const methods: Record<string, Method<Subject>> = {};
  for (const [name, type] of Object.entries(events)) {
    methods[`_Register${name}Event`] = (subject, _args, { client }) => {
      client.subscriptions.add(subscriptionKey(type, target(subject)));
      return null;
    };
    methods[`_Unregister${name}Event`] = (subject, _args, { client }) => {
      client.subscriptions.delete(subscriptionKey(type, target(subject)));
      return null;
    };
  }
  return methods;
}
