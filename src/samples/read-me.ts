import type { TabBlueprint } from '../files/blueprint.ts';

/** The first tab: how the workbook is meant, in a few lines. */
export const READ_ME: TabBlueprint = {
  name: 'Read me',
  colour: '3F5B57',
  lines: [
    'The materials of your bench',
    'This workbook is yours. Everything in it can be read and mended without Jarleaf; add columns, tabs, formulas and colours as you like.',
    '',
    '1  Enter what you have: one row per lot (a pack, a jar, a pot of paste) on Tissue, Paste, Buffers, ReleasePaper, Housing or Sundries.',
    '2  Log what you do on TreatmentLog. Jarleaf takes the materials from stock by the rates on UsageRates, oldest and opened lots first.',
    '3  Type over Left when you have weighed or counted something. The difference is offered as a correction.',
    '4  Put planned work on Plan: Jarleaf says what will be short, what to make, what to buy, and what it costs.',
    '',
    'Materials, Treatments, UsageRates and Recipes hold a first set of common practice. Change all of it to your own experience.',
    'Grey columns are written by Jarleaf. Movements is its ledger: mistakes are reversed there by a further row, never deleted.',
    '',
    'Jarleaf counts. It never says that a treatment, a material or a mixture is safe for an object or for you: spot-test first,',
    "and follow the suppliers' safety data sheets, local codes and your own judgement. Wear protection with alkalis, solvents and hot plates.",
    'Calibration buffers treat nothing. Silicone release paper is never washed. Limewater can darken groundwood paper.',
  ],
};
