/** Sesame, and what the European Union names beside the American nine. */
import {
  ANNEX_II,
  despite,
  FALCPA,
  GUIDE,
  MEMORY,
  names,
  plainly,
  sometimes,
  type WordRow,
} from '#lib/station/label-words/word-row.ts'

export const SEED_WORDS: readonly WordRow[] = [
  plainly('sesame', 'sesame', FALCPA),
  names(
    'sesame',
    `benne, benniseed, gingelly, gomasio, halvah, sesame oil, sesame paste, sesame salt, sesame seed,
     sesamol, sesemolina, sim sim, tahini, tahina, tehina, til`,
    GUIDE.sesame,
  ),
  names('sesame', 'halva, tahin, benne seed, zaatar, sesamolina, gingelly oil, til oil', MEMORY),
  sometimes('sesame', 'spice blend, flavoring, falafel, hummus, baked good', GUIDE.sesame),
  sometimes(
    'sesame',
    'natural flavor, artificial flavor, houmous, hummous, spice mix, dukkah',
    MEMORY,
  ),
  despite('sesame', 'tilapia, until', MEMORY),
  plainly('celery', 'celery', ANNEX_II),
  names('celery', 'celeriac, celery seed, celery salt, celery root', MEMORY),
  plainly('mustard', 'mustard', ANNEX_II),
  despite('mustard', 'mustard green', MEMORY),
  plainly('sulphites', 'sulphite, sulfite, sulphur dioxide, sulfur dioxide', ANNEX_II),
  names(
    'sulphites',
    `bisulphite, bisulfite, metabisulphite, metabisulfite, hydrogen sulphite, hydrogen sulfite`,
    MEMORY,
  ),
  sometimes('sulphites', 'wine, wine vinegar, dried apricot', MEMORY),
  plainly('lupin', 'lupin', ANNEX_II),
  names('lupin', 'lupine, lupini, lupini bean, lupin flour', MEMORY),
]
