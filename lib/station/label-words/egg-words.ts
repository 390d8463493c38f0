import {
  despite,
  FALCPA,
  GUIDE,
  MEMORY,
  names,
  plainly,
  sometimes,
  type WordRow,
} from '#lib/station/label-words/word-row.ts'

export const EGG_WORDS: readonly WordRow[] = [
  plainly('egg', 'egg', FALCPA),
  names(
    'egg',
    `albumin, albumen, dried egg, egg powder, egg solid, egg white, egg yolk, eggnog, globulin,
     livetin, lysozyme, mayonnaise, meringue, ovalbumin, ovomucin, ovomucoid, ovovitellin, surimi`,
    GUIDE.egg,
  ),
  names('egg', 'egg wash, egg noodle, aioli, mayo, hollandaise, ovoglobulin', MEMORY),
  sometimes(
    'egg',
    'lecithin, macaroni, marzipan, marshmallow, nougat, pasta, egg substitute',
    GUIDE.egg,
  ),
  sometimes('egg', 'egg replacer, custard, brioche, noodle', MEMORY),
  despite('egg', 'eggplant', GUIDE.egg),
  despite(
    'egg',
    `soy lecithin, soya lecithin, soybean lecithin, sunflower lecithin, rapeseed lecithin,
     canola lecithin, lactalbumin, lactoglobulin`,
    MEMORY,
  ),
]
