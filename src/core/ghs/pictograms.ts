/**
 * The nine pictograms in words: what each shows, by the names that the GHS gives them, and what it stands for, by the
 * list of OSHA's Hazard Communication Standard pictogram card (a work of the US government), as reprinted by trade
 * pages on GHS labels (cleanlink.com, "GHS Chemical Label Specifics"). The order of codes is that of the GHS.
 */
export const PICTOGRAMS = {
  GHS01: { shows: 'exploding bomb', means: 'explosives, self-reactives, organic peroxides' },
  GHS02: {
    shows: 'flame',
    means: 'flammables, pyrophorics, self-heating, emits flammable gas, self-reactives, organic peroxides',
  },
  GHS03: { shows: 'flame over circle', means: 'oxidizers' },
  GHS04: { shows: 'gas cylinder', means: 'gases under pressure' },
  GHS05: { shows: 'corrosion', means: 'skin corrosion or burns, eye damage, corrosive to metals' },
  GHS06: { shows: 'skull and crossbones', means: 'acute toxicity (fatal or toxic)' },
  GHS07: {
    shows: 'exclamation mark',
    means:
      'irritant (skin and eye), skin sensitizer, acute toxicity, narcotic effects, respiratory tract irritant, hazardous to the ozone layer',
  },
  GHS08: {
    shows: 'health hazard',
    means:
      'carcinogen, mutagenicity, reproductive toxicity, respiratory sensitizer, target organ toxicity, aspiration toxicity',
  },
  GHS09: { shows: 'environment', means: 'aquatic toxicity' },
} as const;

export type PictogramCode = keyof typeof PICTOGRAMS;
