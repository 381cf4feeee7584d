/**
 * Where the statements come from.
 *
 * H and P statements, signal words and pictograms: the table of the GHS page of PubChem, file ghscode_10, as published
 * in the repository github.com/cheminfo/ghs-hazard, data/ghscode_10.txt at commit
 * c090d166a8d428aa631e14af6ea534badcc17e00. The table states no edition; it has H209 to H211, which the ninth revised
 * edition (2021) brought, and marks as deleted what they replaced. It was read as Latin-1 and turned into these files
 * by a program; spelling (oxidizer, vapor) and slips (“Maybe sensitive”, “May causes damage”) are the source's.
 * Hazard classes, categories and most precautionary codes per class are left out; kept of these are the ones that call
 * for protective equipment (P280 to P284).
 * EUH statements: data/euh.mjs of the same repository at commit e411e80f7d06f48d969b8139d7f06faf6c5f335e.
 *
 * The repository is under the MIT licence by its package.json and README; its LICENSE file could not be read:
 *
 * Copyright (c) the authors of github.com/cheminfo/ghs-hazard
 *
 * Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
 * documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
 * rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to
 * permit persons to whom the Software is furnished to do so, subject to the following conditions:
 *
 * The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
 * Software.
 *
 * THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
 * WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
 * COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
 * OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
 */

/** What the table is called where its sentences are shown. */
export const TABLE_NAME =
  'Statements of the UN Globally Harmonized System (GHS), as published by PubChem (ghscode_10), and supplemental EU statements (EUH), both by way of cheminfo/ghs-hazard (MIT licence)';
