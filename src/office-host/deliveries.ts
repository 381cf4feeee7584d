/** What passes between the host and its clients, held back until a test lets it go. */
export type DeliveryKind = 'request' | 'response' | 'event';

export interface Delivery {
  readonly id: number;
  readonly client: string;
  readonly kind: DeliveryKind;
}

interface Waiting extends Delivery {
  readonly deliver: () => void;
}

/**
 * Delivers requests, responses and events, each in a turn of its own, in the order in which they were sent.
 * Kinds that are held back wait until they are let go, one by one and in any order of clients: so a test can go
 * through the ways in which clients come in each other's way.
 */
export class Deliveries {
  private readonly waiting: Waiting[] = [];
  private held: ReadonlySet<DeliveryKind> = new Set();
  private nextId = 1;

  /** Holds back all that is sent from now on, of the kinds given (default: requests and events). */
  hold(kinds: readonly DeliveryKind[] = ['request', 'event']): void {
    this.held = new Set(kinds);
  }

  /** What is held back, in the order sent. */
  get pending(): readonly Delivery[] {
    return this.waiting.map(({ id, client, kind }) => ({ id, client, kind }));
  }

  /** Lets one go, at once; by default the oldest. Throws where there is none. */
  release(id: number | undefined = this.waiting[0]?.id): void {
    const index = this.waiting.findIndex((each) => each.id === id);
    const [found] = index < 0 ? [] : this.waiting.splice(index, 1);
    if (!found) throw new Error(`Nothing is held back under the number ${id}.`);
    found.deliver();
  }

  /** Lets the oldest of a client go, and of a kind where one is given. Says whether there was one. */
  releaseOf(client: string, kind?: DeliveryKind): boolean {
    const found = this.waiting.find(
      (each) => each.client === client && (kind === undefined || each.kind === kind),
    );
    if (found) this.release(found.id);
    return found !== undefined;
  }

  /** Holds nothing back any longer, and lets all go in the order sent. */
  flow(): void {
    this.held = new Set();
    while (this.waiting.length > 0) this.release();
  }

  /** Sends something. Used by the host. */
  send(client: string, kind: DeliveryKind, deliver: () => void): void {
    const delivery = { id: this.nextId++, client, kind, deliver };
    if (this.held.has(kind)) this.waiting.push(delivery);
    else setTimeout(deliver, 0);
  }
}
