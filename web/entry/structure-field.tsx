import { useState } from 'preact/hooks'
import { Problems } from '../parts/problem.tsx'
import { setMaterial, typedMaterial } from './material-draft.ts'
import { TextField } from './parts.tsx'
import { StructureEditor } from './structure-editor.tsx'

/** A structure as SMILES, and as a drawing beside it where one is wanted: either follows the other. */
export function StructureField({ invalid, wrong }: { readonly invalid: boolean; readonly wrong: string | null }) {
  const [drawing, setDrawing] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  return (
    <>
      <TextField
        label="SMILES"
        help="The structure as a line, from a data sheet or a drawing program: CC(=O)OCC is ethyl acetate. It is drawn as you type."
        value={typedMaterial.value.smiles}
        placeholder="O=C(c1ccccc1)C(O)c1ccccc1"
        invalid={invalid}
        wrong={wrong}
        onText={text => setMaterial({ smiles: text })}
      />
      <p class="dos">
        <button type="button" class="do" aria-expanded={drawing} onClick={() => setDrawing(!drawing)}>
          {drawing ? 'Put the drawing away' : 'Draw it instead'}
        </button>
      </p>
      {drawing && (
        <>
          {fault !== null && (
            <Problems
              of={[
                {
                  code: 'editor-not-loaded',
                  where: ['drawing'],
                  what: fault,
                  why: 'The drawing board is fetched when it is first wanted.',
                  cure: 'Type the SMILES; or put the drawing away and open it again once the server answers.',
                },
              ]}
            />
          )}
          <StructureEditor
            smiles={typedMaterial.value.smiles}
            onDrawn={smiles => setMaterial({ smiles })}
            onFault={() => setFault('The drawing board could not be fetched.')}
          />
        </>
      )}
    </>
  )
}
