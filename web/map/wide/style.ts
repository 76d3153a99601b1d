import type { StylesheetJson } from 'cytoscape'
import type { Tokens } from './tokens.ts'

// The library takes no quoted names; every face whose name is one identifier, and the page's own, need none.
const face = 'Ysabeau Office Variable, Gill Sans, Optima, Segoe UI, sans-serif'

/** A goal is ruled off twice, as on the scheme. */
const doubleRule = (ink: string): string =>
  `data:image/svg+xml;utf8,${encodeURIComponent(`<svg xmlns="http://www.w3.org/2000/svg" width="44" height="4"><path d="M0 .5h44M0 3h44" stroke="${ink}"/></svg>`)}`

/** The network's style: lines, not boxes; solid seen, dashed remembered, hatched unknown; pen for what is the reader's. */
export function styleOf(tokens: Tokens): StylesheetJson {
  return [
    {
      selector: 'node',
      style: {
        shape: 'rectangle',
        width: 'data(w)',
        height: 'data(h)',
        'background-color': tokens.paper,
        'border-width': 0,
        label: 'data(label)',
        color: tokens.ink,
        'font-family': face,
        'font-size': 13.33,
        'text-wrap': 'wrap',
        'text-max-width': '400px',
        'text-valign': 'center',
        'text-halign': 'center',
        'line-height': 1.2,
      },
    },
    { selector: 'node.start', style: { color: tokens.pen } },
    {
      selector: 'node.goal',
      style: {
        // The library knows the hundreds only.
        'font-weight': 600,
        'background-image': doubleRule(tokens.ink),
        'background-width': '44px',
        'background-height': '4px',
        'background-position-y': '100%',
      },
    },
    { selector: 'node.meeting', style: { shape: 'ellipse', 'background-color': tokens.rail, label: '' } },
    {
      selector: 'node.looked',
      style: { 'background-color': tokens['pen-wash'], 'border-width': 2, 'border-style': 'solid', 'border-color': tokens.pen },
    },
    {
      selector: 'edge',
      style: {
        width: 1.1,
        'line-color': tokens.rail,
        'curve-style': 'straight',
        'target-arrow-color': tokens.rail,
        'arrow-scale': 0.8,
      },
    },
    {
      selector: 'edge.bent',
      style: {
        'curve-style': 'round-segments',
        'segment-weights': 'data(weights)',
        'segment-distances': 'data(distances)',
        'edge-distances': 'node-position',
      },
    },
    { selector: 'edge.head', style: { 'target-arrow-shape': 'vee' } },
    { selector: 'edge.remembered', style: { 'line-style': 'dashed', 'line-dash-pattern': [5, 3] } },
    // Short strokes across the way it runs: hatched.
    { selector: 'edge.unknown', style: { 'line-style': 'dashed', 'line-dash-pattern': [1, 3], width: 5 } },
    { selector: 'edge.many', style: { width: 1.8 } },
    { selector: 'edge.looked', style: { 'line-color': tokens.pen, 'target-arrow-color': tokens.pen } },
  ]
}
