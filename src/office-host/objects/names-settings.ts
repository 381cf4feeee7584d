import { fullAddress, parseArea, splitAddress } from '../cell-area.ts';
import type { RangeSubject } from '../client-state.ts';
import { HostError, invalidArgument, itemNotFound } from '../host-error.ts';
import { type DefinedName, findName, findSheet, type MemoryWorkbook } from '../memory-workbook.ts';
import type { Json } from '../request.ts';
import { areaOf, plain, text } from './arguments.ts';
import { LiveObject, type ObjectKind, type RequestSession, type Subjects } from './object-kind.ts';

/** The range that a name stands for, or null where it stands for something else. */
function rangeOf(workbook: MemoryWorkbook, { formula }: DefinedName): RangeSubject | null {
  const { sheet: name, rest } = splitAddress(formula.slice(1));
  const sheet = name === null ? undefined : findSheet(workbook, name);
  if (!sheet) return null;
  try {
    return { sheet, area: parseArea(rest) };
  } catch (error) {
    if (error instanceof HostError) return null;
    throw error;
  }
}

const namedRange = (name: DefinedName, session: RequestSession): LiveObject | null => {
  const range = rangeOf(session.editing.workbook, name);
  return range && session.range(range);
};

export const namesKind: ObjectKind<null> = {
  items: (_, { editing }) => editing.workbook.names.map((name) => new LiveObject('NamedItem', name)),
  index: (_, key, { editing }) => {
    const name = findName(editing.workbook, text(key));
    if (!name) throw itemNotFound();
    return new LiveObject('NamedItem', name);
  },
  methods: {
    GetCount: (_, _args, { editing }) => editing.workbook.names.length,
    GetItemOrNullObject: (_, [key], { editing }) => {
      const name = findName(editing.workbook, text(key));
      return name ? new LiveObject('NamedItem', name) : null;
    },
  },
  edits: {
    Add: (_, [name, reference], { editing }) => {
      const { workbook } = editing;
      const given = text(name);
      if (!/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(given)) throw invalidArgument();
      if (findName(workbook, given)) throw new HostError('ItemAlreadyExists', 'The name is taken.');
      let formula: string;
      if (reference instanceof LiveObject) {
        if (reference.kind !== 'Range') throw invalidArgument();
        const range = reference.subject as RangeSubject;
        formula = `=${fullAddress(range.sheet.name, areaOf(range)).replace(/([A-Z]+)(\d+)(?=:|$)/g, '$$$1$$$2')}`;
      } else formula = text(reference).startsWith('=') ? text(reference) : `=${text(reference)}`;
      const added = { name: given, formula };
      workbook.names = [...workbook.names, added];
      return new LiveObject('NamedItem', added);
    },
  },
};

export const nameKind: ObjectKind<DefinedName> = {
  id: ({ name }) => ({ _Id: name }),
  scalars: {
    Formula: ({ formula }) => formula,
    Name: ({ name }) => name,
    Type: (name, { editing }) => (rangeOf(editing.workbook, name) ? 'Range' : 'String'),
    Value: ({ formula }) => formula.slice(1),
    Visible: () => true,
  },
  methods: {
    GetRange: (name, _args, session) => {
      const range = namedRange(name, session);
      if (!range) throw itemNotFound();
      return range;
    },
    GetRangeOrNullObject: (name, _args, session) => namedRange(name, session),
  },
  edits: {
    Delete: (name, _args, { editing }) => {
      editing.workbook.names = editing.workbook.names.filter((each) => each !== name);
      return null;
    },
  },
};

type SettingSubject = Subjects['Setting'];
const setting = (key: string): LiveObject => new LiveObject('Setting', { key });

export const settingsKind: ObjectKind<null> = {
  items: (_, { editing }) => [...editing.workbook.settings.keys()].map(setting),
  index: (_, key, { editing }) => {
    if (!editing.workbook.settings.has(text(key))) throw itemNotFound();
    return setting(text(key));
  },
  methods: {
    GetCount: (_, _args, { editing }) => editing.workbook.settings.size,
    GetItemOrNullObject: (_, [key], { editing }) =>
      editing.workbook.settings.has(text(key)) ? setting(text(key)) : null,
  },
  edits: {
    Add: (_, [key, value], { editing }) => {
      editing.workbook.settings.set(text(key), plain(value));
      return setting(text(key));
    },
  },
};

export const settingKind: ObjectKind<SettingSubject> = {
  id: ({ key }) => ({ _Id: key }),
  scalars: {
    Key: ({ key }) => key,
    Value: ({ key }, { editing }) => (editing.workbook.settings.get(key) ?? null) as Json,
  },
  setters: {
    Value: ({ key }, value, { editing }) => {
      editing.workbook.settings.set(key, value);
    },
  },
  edits: {
    Delete: ({ key }, _args, { editing }) => {
      editing.workbook.settings.delete(key);
      return null;
    },
  },
};
