/**
 * What the European rules add: EUH001 to EUH401, without signal words or pictograms.
 * The source, its licence, and how a line reads: see source.ts and statement-table.ts.
 */
export const EUROPEAN_SUPPLEMENTS = `
EUH001|||Explosive when dry
EUH006|||Explosive with or without contact with air
EUH014|||Reacts violently with water
EUH018|||In use may form flammable/explosive vapour-air mixture
EUH019|||May form explosive peroxides
EUH044|||Risk of explosion if heated under confinement
EUH029|||Contact with water liberates toxic gas
EUH031|||Contact with acids liberates toxic gas
EUH032|||Contact with acids liberates very toxic gas
EUH066|||Repeated exposure may cause skin dryness or cracking
EUH070|||Toxic by eye contact
EUH071|||Corrosive to the respiratory tract
EUH059|||Hazardous to the ozone layer, superseded by GHS Class 5.1 in the second adaptation to technical progress of CLP.
EUH201|||Contains lead. Should not be used on surfaces liable to be chewed or sucked by children.
EUH201A|||Warning! Contains lead.
EUH202|||Cyanoacrylate. Danger. Bonds skin and eyes in seconds. Keep out of the reach of children.
EUH203|||Contains chromium(VI). May produce an allergic reaction.
EUH204|||Contains isocyanates. May produce an allergic reaction.
EUH205|||Contains epoxy constituents. May produce an allergic reaction.
EUH206|||Warning! Do not use together with other products. May release dangerous gases (chlorine).
EUH207|||Warning! Contains cadmium. Dangerous fumes are formed during use. See information supplied by the manufacturer. Comply with the safety instructions.
EUH208|||Contains <name of sensitising substance>. May produce an allergic reaction.
EUH209|||Can become highly flammable in use.
EUH209A|||Can become flammable in use.
EUH210|||Safety data sheet available on request.
EUH401|||To avoid risks to human health and the environment, comply with the instructions for use.
`;
