import { takeResults } from '../function-calls.ts';
import { plain } from './arguments.ts';
import type { ObjectKind } from './object-kind.ts';

/**
 * Services that have nothing to do with the workbook. By them the library tells that the add-in is ready for commands
 * and functions, on which nothing depends here, and gives the results of functions.
 */
export const serviceKind: ObjectKind<string> = {
  methods: {
    NotifyActionHandlerReady: () => null,
    // The task pane is shown or hidden: the page runs in either case.
    SetAppRuntimeState: () => null,
    _GetEnabledFeatures: () => [],
    _SetOsfControlContainerReadyForCustomFunctions: () => null,
    SetInvocationArrayResults: (_, [results], { client }) => {
      takeResults(client, plain(results));
      return null;
    },
    SetInvocationResults: (_, [results], { client }) => {
      takeResults(client, plain(results));
      return null;
    },
  },
};
