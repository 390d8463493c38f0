import fields from '#components/menu/fields/fields.module.css'
import { About } from '#components/menu/fields/help.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/house/kitchen.module.css'
import { isOfVolume, sizesOf, TOOLS, toolOf } from '#components/menu/pan/portion-now.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { isRecord, type Row, rowsOf, textIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'

/** Every tool of a level volume in every size that it is sold in. */
const ALL: readonly Row[] = TOOLS.filter(isOfVolume).flatMap((tool) =>
  sizesOf(tool).map((size) => ({ tool, ...size })),
)

const FIRST: Row = { tool: 'scoop', number: 16 }

const isSame = (one: Row, other: Row): boolean =>
  Object.keys({ ...one, ...other }).every((field) => one[field] === other[field])

/** Portion tools at hand, and whose own each is. */
export function ToolRows() {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const components = rowsOf(draft, 'component')
  const said = (tool: Row) => {
    const kind = toolOf(tool)
    return kind === null
      ? words.screen.notSaid
      : `${words.pan.tools[kind]} ${words.toolSize(kind, tool).short}`
  }
  const put = (id: string, changed: Row) => take({ do: 'put', entity: 'tool', id, fields: changed })
  return (
    <div className={styles.wide}>
      <About of="toolsAtHand">
        <fieldset className={styles.part}>
          <legend>{words.house.toolsAtHand}</legend>
          {rowsOf(draft, 'tool').map(({ id, row }) => {
            const now = isRecord(row.tool) ? row.tool : {}
            const at = ALL.findIndex((one) => isSame(one, now))
            return (
              <div key={id} className={`${styles.row} ${styles.tool}`}>
                <TypedField
                  entity="tool"
                  id={id}
                  field="name"
                  label={words.house.toolName}
                  help="toolsAtHand"
                />
                <label className={fields.list}>
                  <span>{words.house.toolSizeOf}</span>
                  <select
                    value={at}
                    onChange={({ target }) => put(id, { tool: ALL[Number(target.value)] ?? FIRST })}
                  >
                    {at === -1 && <option value={-1}>{said(now)}</option>}
                    {ALL.map((one, which) => (
                      <option key={said(one)} value={which}>
                        {said(one)}
                      </option>
                    ))}
                  </select>
                </label>
                <label className={fields.list}>
                  <span>{words.house.toolUsual}</span>
                  <select
                    value={textIn(row, 'usualFor')}
                    onChange={({ target }) => put(id, { usualFor: target.value || null })}
                  >
                    <option value="">{words.house.toolFree}</option>
                    {components.map((one) => (
                      <option key={one.id} value={one.id}>
                        {textIn(one.row, 'name') || one.id}
                      </option>
                    ))}
                  </select>
                </label>
                <Button
                  kind="quiet"
                  aria-label={words.house.takeTool(textIn(row, 'name'))}
                  onClick={() => take({ do: 'remove', entity: 'tool', id })}
                >
                  ×
                </Button>
              </div>
            )
          })}
          <Button
            kind="quiet"
            onClick={() =>
              put(newId(draft, 'tool', said(FIRST)), { name: said(FIRST), tool: FIRST })
            }
          >
            {words.house.addTool}
          </Button>
        </fieldset>
      </About>
    </div>
  )
}
