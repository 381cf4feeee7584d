import { invalidReference, itemNotFound, notImplemented } from './host-error.ts';
import { KINDS } from './objects/kinds.ts';
import { type Argument, LiveObject, type ObjectKind, type RequestSession } from './objects/object-kind.ts';
import { type ArgumentInfo, type Json, type ObjectPath, PATH, type RequestBody } from './request.ts';
import { isOffered, type RequirementSets, requireMember } from './requirement-sets.ts';

/** The kind of an object, for any subject: an object's subject is always of its own kind. */
export const kindOf = (object: LiveObject): ObjectKind<unknown> => KINDS[object.kind] as ObjectKind<unknown>;

/** The name by which the library knows a member, spelt as it passes over the bridge. */
export const wireName = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/** The objects that one request speaks of, found by its paths. The null object is null. */
export class LiveObjects {
  private readonly body: RequestBody;
  private readonly session: RequestSession;
  private readonly sets: RequirementSets;
  private readonly found = new Map<number, LiveObject | null>();

  constructor(body: RequestBody, session: RequestSession, sets: RequirementSets) {
    this.body = body;
    this.session = session;
    this.sets = sets;
  }

  /** The object at a path; an edit among the path's methods is done when it is first asked for. */
  at(id: number): LiveObject | null {
    const known = this.found.get(id);
    if (known !== undefined) return known;
    const path = this.body.ObjectPaths[String(id)];
    if (!path) throw invalidReference();
    const object = this.resolve(path);
    this.found.set(id, object);
    return object;
  }

  /** Whether finding the object at a path carries out a method that changes the document. */
  edits(id: number): boolean {
    if (this.found.has(id)) return false;
    const path = this.body.ObjectPaths[String(id)];
    if (path?.ParentObjectPathId === undefined) return false;
    if (this.edits(path.ParentObjectPathId)) return true;
    if (path.ObjectPathType !== PATH.method) return false;
    const parent = this.at(path.ParentObjectPathId);
    return parent !== null && kindOf(parent).edits?.[path.Name] !== undefined;
  }

  argumentsOf(info: ArgumentInfo | undefined): readonly Argument[] {
    return (info?.Arguments ?? []).map((argument, index) => {
      const reference = info?.ReferencedObjectPathIds?.[index];
      if (!reference) return argument;
      const object = this.at(reference);
      if (object === null) throw itemNotFound();
      return object;
    });
  }

  call(object: LiveObject, name: string, args: readonly Argument[]): Json | LiveObject {
    const kind = kindOf(object);
    const method = kind.methods?.[name] ?? kind.edits?.[name];
    if (!method) throw notImplemented(`${object.kind}.${name}()`);
    requireMember(this.sets, `${object.kind}.${name}`);
    return method(object.subject, args, this.session) ?? null;
  }

  private resolve(path: ObjectPath): LiveObject | null {
    switch (path.ObjectPathType) {
      case PATH.global:
        return new LiveObject('Workbook', null);
      case PATH.null:
        return null;
      case PATH.new:
        return new LiveObject('Service', path.Name);
      case PATH.referenceId: {
        const range = this.session.client.references.get(path.Name);
        if (!range) throw invalidReference();
        const object = new LiveObject('Range', range);
        object.referenceId = path.Name;
        return object;
      }
      default:
        return this.member(path);
    }
  }

  private member(path: ObjectPath): LiveObject | null {
    const parent = path.ParentObjectPathId === undefined ? null : this.at(path.ParentObjectPathId);
    if (parent === null) return null;
    const kind = kindOf(parent);
    if (path.ObjectPathType === PATH.property) {
      const navigate = kind.navigations?.[path.Name];
      if (!navigate) throw notImplemented(`${parent.kind}.${path.Name}`);
      requireMember(this.sets, `${parent.kind}.${path.Name}`);
      return navigate(parent.subject, this.session);
    }
    const args = this.argumentsOf(path.ArgumentInfo);
    if (path.ObjectPathType === PATH.indexer) {
      if (!kind.index) throw notImplemented(`${parent.kind}.getItem()`);
      return kind.index(parent.subject, args[0] ?? null, this.session);
    }
    if (path.ObjectPathType !== PATH.method) throw notImplemented(`Object path type ${path.ObjectPathType}`);
    const answer = this.call(parent, path.Name, args);
    if (answer !== null && !(answer instanceof LiveObject)) throw notImplemented(`${path.Name} as an object`);
    return answer;
  }

  /** What tells an object from others, as the library wants it back. */
  identity(object: LiveObject | null): Record<string, Json> | null {
    if (object === null) return null;
    const id = kindOf(object).id?.(object.subject) ?? {};
    return { ...id, ...(object.referenceId === null ? {} : { _ReferenceId: object.referenceId }) };
  }

  /** The properties asked for, such as values, worksheet/name, or items/name of a collection. */
  query(
    object: LiveObject | null,
    select: readonly string[],
    page: { top?: number; skip?: number } = {},
  ): Json {
    if (object === null) return null;
    const kind = kindOf(object);
    const answer = this.identity(object) ?? {};
    if (kind.items) {
      const own = select.filter(
        (name) => kind.scalars?.[wireName(name)] !== undefined && !name.includes('/'),
      );
      const ofItems = select
        .filter((name) => !own.includes(name))
        .map((name) => name.replace(/^items\//, ''))
        .filter((name) => name !== 'items');
      for (const name of own) answer[wireName(name)] = this.scalar(object, wireName(name));
      const skip = page.skip ?? 0;
      const items = kind.items(object.subject, this.session);
      const shown = items.slice(skip, page.top === undefined ? undefined : skip + page.top);
      answer['_Items'] = shown.map((item) => this.query(item, ofItems));
      return answer;
    }
    const all = select.length === 0 || select.includes('$all');
    if (all) {
      for (const name of Object.keys(kind.scalars ?? {})) {
        if (isOffered(this.sets, `${object.kind}.${name}`)) answer[name] = this.scalar(object, name);
      }
    }
    for (const path of select.filter((name) => name !== '$all')) {
      const [head = '', ...rest] = path.split('/');
      const name = wireName(head);
      if (kind.scalars?.[name] && rest.length === 0) answer[name] = this.scalar(object, name);
      else answer[name] = this.nested(object, name, rest, answer[name] ?? {});
    }
    return answer;
  }

  private scalar(object: LiveObject, name: string): Json {
    requireMember(this.sets, `${object.kind}.${name}`);
    return kindOf(object).scalars?.[name]?.(object.subject, this.session) ?? null;
  }

  private nested(object: LiveObject, name: string, rest: readonly string[], so: Json): Json {
    const navigate = kindOf(object).navigations?.[name];
    if (!navigate) throw notImplemented(`${object.kind}.${name}`);
    requireMember(this.sets, `${object.kind}.${name}`);
    const further = rest.length === 0 ? [] : [rest.join('/')];
    const found = this.query(navigate(object.subject, this.session), further);
    return { ...(so as Record<string, Json>), ...(found as Record<string, Json>) };
  }
}
