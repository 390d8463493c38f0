import { About } from '#components/menu/fields/help.tsx'
import { valueAt } from '#components/menu/fields/typed.ts'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import { DensityField } from '#components/menu/pan/density-field.tsx'
import { DepthChoice } from '#components/menu/pan/depth-choice.tsx'
import styles from '#components/menu/pan/portion.module.css'
import {
  isOfVolume,
  sizesOf,
  TOOLS,
  type Tool,
  toolOf,
  withTool,
} from '#components/menu/pan/portion-now.ts'
import { ToolDrawn } from '#components/menu/pan/tool-drawn.tsx'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { portionSteps } from '#lib/editor/cards/pan-holds.ts'
import { isRecord, type Json, type Row, rowOf } from '#lib/editor/draft.ts'

const USUAL_LEVELS = [1, 2, 3, 4] as const

const isSameSize = (portion: Row, size: Row): boolean =>
  Object.entries(size).every(([field, value]) => portion[field] === value)

/** How one portion is taken, and what the pan holds of it. */
export function PortionLeaf({
  pan,
  component,
}: {
  readonly pan: string
  readonly component: string
}) {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const own = rowOf(draft, 'component', component)
  const panRow = rowOf(draft, 'pan', pan)
  const portion = own?.portion
  const tool = toolOf(portion)
  const now: Row = isRecord(portion) ? portion : {}

  const answer = (next: Row, density?: Json) =>
    take(...portionSteps(draft, component, next, density))
  return (
    <div className={styles.leaf}>
      <section className={styles.portion} aria-label={words.pan.portion}>
        <About of="tool">
          <fieldset className={styles.tools}>
            <legend>{words.pan.tool}</legend>
            {TOOLS.map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={tool === one}
                onClick={() => answer(withTool(portion, one))}
              >
                {words.pan.tools[one]}
              </button>
            ))}
          </fieldset>
        </About>
        {tool !== null && (
          <ToolSizes tool={tool} now={now} onSize={(size) => answer({ ...now, ...size })} />
        )}
        {isOfVolume(tool) && (
          <div className={styles.levels}>
            <ToolDrawn portion={now} />
            <About of="levels">
              <Choice
                legend={words.pan.portion}
                isBare
                ways={USUAL_LEVELS.map((count) => ({
                  id: String(count),
                  label: words.pan.level(count),
                }))}
                chosen={typeof now.level === 'number' ? String(now.level) : null}
                onChoose={(count) => answer({ ...now, level: Number(count) })}
              />
            </About>
          </div>
        )}
        {tool === 'tongs' && (
          <TypedField
            entity="component"
            id={component}
            field="portion.grams"
            as="number"
            label={words.pan.grams}
            help="grams"
            unit={words.pan.gramsUnit}
            onAnswer={(grams) =>
              answer({
                ...Object.fromEntries(Object.entries(now).filter(([field]) => field !== 'grams')),
                ...(grams === undefined ? {} : { grams, source: words.pan.weighedHere }),
              })
            }
          />
        )}
        {(tool === 'piece' || tool === 'tongs-pieces') && (
          <TypedField
            entity="component"
            id={component}
            field="portion.pieces"
            as="whole"
            label={words.pan.pieces}
            help="pieces"
          />
        )}
        {tool === 'bottle' && (
          <div className={styles.bottle}>
            <TypedField
              entity="component"
              id={component}
              field="portion.squeezes"
              as="whole"
              label={words.pan.squeezes}
              help="squeezes"
            />
            {(['squeezes', 'grams'] as const).map((part) => (
              <TypedField
                key={part}
                entity="component"
                id={component}
                field={`portion.weighed.${part}`}
                as={part === 'grams' ? 'number' : 'whole'}
                label={part === 'grams' ? words.pan.weighedGrams : words.pan.weighedSqueezes}
                help="squeezes"
                onAnswer={(value) => {
                  const weighed = valueAt(own, 'portion.weighed')
                  answer({
                    ...now,
                    weighed: {
                      ...(isRecord(weighed) ? weighed : {}),
                      ...(value === undefined ? {} : { [part]: value }),
                    },
                  })
                }}
              />
            ))}
          </div>
        )}
      </section>
      <DepthChoice pan={pan} row={panRow} portion={portion} />
      {isOfVolume(tool) && <DensityField component={component} onAnswer={answer} />}
    </div>
  )
}

/** The sizes in which the tool is sold, a scoop's with the colour of its handle. */
function ToolSizes({
  tool,
  now,
  onSize,
}: {
  readonly tool: Tool
  readonly now: Row
  readonly onSize: (size: Row) => void
}) {
  const words = useMenuWords()
  const sizes = sizesOf(tool)
  if (sizes.length === 0) return null
  return (
    <About of={tool === 'scoop' ? 'scoop' : tool === 'cup' ? 'cup' : 'tool'}>
      <fieldset className={styles.sizes}>
        <legend className="visually-hidden">{words.pan.size}</legend>
        {sizes.map((size) => {
          const said = words.toolSize(tool, size)
          return (
            <button
              key={said.label}
              type="button"
              aria-label={said.label}
              aria-pressed={isSameSize(now, size)}
              onClick={() => onSize(size)}
            >
              {said.token !== null && (
                <i aria-hidden="true" style={{ background: `var(${said.token})` }} />
              )}
              {said.short}
            </button>
          )
        })}
      </fieldset>
    </About>
  )
}
