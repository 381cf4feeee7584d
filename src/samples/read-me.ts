import type { TabBlueprint } from '../workbook/blueprint.ts';

/** The first tab: how the workbook is meant, in a few lines. */
export const READ_ME: TabBlueprint = {
  name: 'Read me',
  colour: '3F5B57',
  lines: [
    'The materials of your bench',
    'This workbook is yours. Everything in it can be read and mended without Jarleaf; add columns, tabs, formulas and colours as you like.',
    '',
    '1  Enter what you have: one row per lot (a pack, a jar, a pot of paste) on Tissue, Paste, Buffers, ReleasePaper, Housing or Sundries.',
    '2  Log what you do on TreatmentLog. Jarleaf takes the materials from stock by the rates on UsageRates: first what goes off first, then what is open, then what came first.',
    '3  Type over Left when you have weighed or counted something. Jarleaf then says which Count to enter in Movements.',
    '4  Put planned work on Plan: Jarleaf says what will be short, what to order, and what it costs.',
    '',
    'Materials, Treatments, UsageRates and Recipes hold a first set of common practice. Change all of it to your own experience.',
    'Make a table longer (drag its corner, or Define Range) when you type below it: a row outside the table is not read, and Jarleaf says so.',
    'What you really used instead of the rates goes into Notes of the treatment log, so: Used: wheat starch paste=12 g; kozo tissue 5 g=40 cm2@T-002',
    'Columns in grey letters are written by Jarleaf. Movements is its ledger: mistakes are reversed there by a further row, never deleted.',
    '',
    'Jarleaf counts. It never says that a treatment, a material or a mixture is safe for an object or for you: spot-test first,',
    "and follow the suppliers' safety data sheets, local codes and your own judgement. Wear protection with alkalis, solvents and hot plates.",
    'Alkalis can damage eyes for good. Mould, on an object or in a pot: stop, do not brush, keep it apart and ask who is trained for it.',
    'Peroxides and borohydrides are not in this first set: leave them to training and licensed practice. Calibration buffers treat nothing.',
    'Silicone release paper is never washed. Limewater can darken groundwood paper.',
  ],
};
