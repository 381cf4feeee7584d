import { generateCustomFunctionsMetadata } from 'custom-functions-metadata';

/** What a file with custom functions says of them to the spreadsheet. */
export interface FunctionsMetadata {
  /** The text of functions.json. */
  readonly json: string;
  /** The ids, each of which code must be associated with. */
  readonly ids: readonly string[];
}

/**
 * Reads functions.json from the comments of a file with custom functions.
 * @throws where a comment doesn't say what is needed
 */
export async function functionsMetadata(file: string): Promise<FunctionsMetadata> {
  const { metadataJson, associate, errors } = await generateCustomFunctionsMetadata([file], false);
  if (errors.length > 0) throw new Error(errors.join('\n'));
  return {
    json: `${JSON.stringify(JSON.parse(metadataJson), null, 2)}\n`,
    ids: associate.map(({ id }) => id),
  };
}
