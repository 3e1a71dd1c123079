// The one style sheet of a report: for a screen, a telephone and paper (A4 and Letter alike). Built of logical
// properties, so that the same sheet serves both directions of writing. Verdict colours reach a contrast of 4.5
// on white and are never alone: a sign and a word stand beside them.
import { paperStyle } from './paper-style.js';

const colours = `
:root{--ink:#23262b;--quiet:#565d66;--faint:#d5d3ca;--wash:#f6f4ee;--accent:#4a3f17;
--normal:#1f7a68;--low:#7d5400;--high:#6a48c4;--short:#b8184e;--open:#a8410c;--unsure:#5f563c;--wobble:#1767a8;--unread:#5f6770}
.normal{--verdict:var(--normal)}.low{--verdict:var(--low)}.high{--verdict:var(--high)}.short{--verdict:var(--short)}
.open{--verdict:var(--open)}.unsure{--verdict:var(--unsure)}.wobble{--verdict:var(--wobble)}.unread{--verdict:var(--unread)}`;

const text = `
*{box-sizing:border-box}
html{font:16px/1.45 system-ui,"Segoe UI","Noto Sans","Noto Sans Arabic","DejaVu Sans",Tahoma,sans-serif;color:var(--ink);background:#fff;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0}
main{max-width:52rem;margin:0 auto;padding:2rem 1.25rem 3rem;overflow-wrap:anywhere}
.shapes{position:absolute}
h1,h2,h3,h4,p,ul,ol,dl,dd{margin:0;padding:0}
h1{font-size:1.9rem;line-height:1.15;letter-spacing:-.01em;color:var(--accent)}
h2{font-size:1.02rem;line-height:1.3}
.part{font-size:1.5rem;color:var(--accent);margin-block:3rem .25rem;padding-block-start:1.5rem;border-block-start:3px double var(--faint)}
h3{font-size:1.15rem;margin-block:1.9rem .6rem;color:var(--accent)}
h4{font-size:1rem;line-height:1.35}
p+p,ul+p{margin-block-start:.45rem}
bdi.name,bdi.value{font-variant-numeric:tabular-nums}
bdi.value{white-space:nowrap}
th,td{overflow-wrap:break-word}.small,bdi.long,bdi.text{overflow-wrap:anywhere}
.small{display:block;color:var(--quiet);font-size:.86em;line-height:1.35}
.aside{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}`;

const marks = `
.sign{width:1em;height:1em;color:var(--verdict);flex:none;vertical-align:-.12em}
.verdict{color:var(--verdict);font-weight:600;white-space:nowrap}`;

const owner = `
header{border-block-end:2px solid var(--accent);padding-block-end:.8rem}
.about{margin-block:.2rem 0;color:var(--quiet)}
.about:nth-of-type(1){font-size:1.12rem;color:var(--ink);margin-block-start:.45rem}
.notices{margin-block:.9rem 0;padding:.55rem .8rem;border:2px dashed var(--accent);background:var(--wash)}
.summary{margin-block:1.1rem 1.3rem}
.headline{font-size:1.35rem;line-height:1.3;font-weight:650}
.strip{display:flex;flex-wrap:wrap;gap:2px;margin-block:.6rem .3rem}
.strip span{flex:1 0 .8rem;max-width:1.4rem;height:1.75rem;display:flex;align-items:center;justify-content:center;border:1px solid var(--faint);border-block-end:3px solid var(--verdict);font-size:.72rem}
.strip span:not(.normal,.unread){background:var(--verdict);border-color:var(--verdict)}
.strip span:not(.normal,.unread) .sign{color:#fff}
.tally{color:var(--quiet);font-size:.9rem}
.answers{display:grid;grid-template-columns:1fr 1fr;gap:1.15rem 2rem;grid-template-areas:"failed failed" "why why" "done unchecked" "checked unchecked" "checked data"}
.answers h2{border-block-start:1px solid var(--faint);padding-block-start:.5rem;margin-block-end:.3rem}
.answers:has(#brought){grid-template-areas:"brought brought" "failed failed" "why why" "done unchecked" "checked unchecked" "checked data"}
#brought dl{display:grid;grid-template-columns:1fr 1fr;column-gap:2rem}#brought dl>div{grid-template-columns:minmax(5rem,9rem) 1fr}
#brought{grid-area:brought}#failed{grid-area:failed}#why{grid-area:why}#done{grid-area:done}#checked{grid-area:checked}#unchecked{grid-area:unchecked}#data{grid-area:data}
.answers #failed{font-size:1.05rem}
.answers ul{list-style:none}
.answers li{position:relative;padding-inline-start:1.1rem}
.answers li+li{margin-block-start:.3rem}
.answers li::before{content:"";position:absolute;inset-inline-start:.1rem;inset-block-start:.68em;width:.5rem;border-block-start:2px solid var(--faint)}
.answers .marked li{padding-inline-start:1.6rem}
.answers .marked li::before{content:none}
.answers .marked .sign{position:absolute;inset-inline-start:0;inset-block-start:.2em;width:1.1rem;height:1.1rem}
.footer{margin-block-start:1.4rem;padding-block-start:.5rem;border-block-start:1px solid var(--faint);color:var(--quiet);font-size:.85rem}`;

const facts = `
dl>div{display:grid;grid-template-columns:minmax(7rem,11rem) 1fr;column-gap:1rem;padding-block:.14rem}
dt{color:var(--quiet)}
dd{grid-column:2}
dl+p,dl+.wide{margin-block-start:.6rem}
.card{margin-block:.8rem;padding:.6rem .9rem .7rem;border:1px solid var(--faint);border-block-start:3px solid var(--verdict)}
.card h4{margin-block-end:.35rem}
.card .of{font-weight:600}`;

const tables = `
table{width:100%;border-collapse:collapse;margin-block:.5rem .8rem;font-size:.86rem;line-height:1.3}
caption{text-align:start;font-weight:600;padding-block-end:.15rem}
caption.aside{font-weight:400;padding:0}
th,td{padding:.3rem .45rem;text-align:start;vertical-align:top;border-block-end:1px solid var(--faint)}
thead th{font-weight:600;color:var(--quiet);border-block-end:2px solid var(--accent);vertical-align:bottom;overflow-wrap:normal}
tbody th{font-weight:600}
.figures{text-align:end}td.figures{white-space:nowrap}
table.slim{width:auto}.slim td,.slim th{padding-inline-end:1.6rem}
td.scale{width:6rem}
svg.scale,.trace svg{direction:ltr}
svg.scale{display:block;width:5.7rem;height:.95rem}
.band{fill:#e4efe9}.axis{stroke:#aaa89e;stroke-width:1}.limit{stroke:var(--normal);stroke-width:1.2}
.spread{stroke:var(--verdict);stroke-width:3;stroke-linecap:round;opacity:.45}.dot{fill:var(--verdict)}`;

const connector = `
.connector{margin-block:.9rem}
.row{color:var(--quiet);font-size:.86rem;margin-block:.7rem .2rem}
.contacts{list-style:none;display:flex;flex-wrap:wrap;gap:3px}
[dir=rtl] .contacts,[dir=rtl] .strip{justify-content:flex-end}
.contact{position:relative;display:flex;flex:0 0 calc((100% - 57px)/20);flex-direction:column;align-items:center;min-width:0;font-size:.7rem;line-height:1.2;border:1px solid var(--faint);border-block-start:4px solid var(--verdict);padding-block:.15rem}
.contact .pin{font-weight:600}
.contact .sign{width:1rem;height:1rem;margin-block:.15rem}
.contact .line{writing-mode:vertical-rl;max-height:7.6rem;margin-block-end:.3rem;overflow:hidden;white-space:nowrap;text-overflow:ellipsis;color:var(--quiet)}
.contact:not(.normal,.unread){border-color:var(--verdict);border-width:2px;border-block-start-width:4px;background:#fff}
.contact:not(.normal,.unread) .line{color:var(--ink)}
.contact .word{font-weight:700;color:var(--verdict);font-size:.6rem;line-height:1.1;text-align:center;overflow-wrap:normal;margin-block-start:auto}
.legend{list-style:none;display:flex;flex-wrap:wrap;gap:.2rem 1.3rem;margin-block:.6rem .4rem;font-size:.86rem}`;

const trace = `
.trace{margin:.9rem 0}
figcaption{font-weight:600;font-size:.9rem;margin-block-end:.25rem}
.trace svg{display:block;width:100%;height:auto;border-block-start:1px solid var(--faint)}
.trace .press{fill:#ece7d6}.trace .value,.trace .over{fill:none;stroke:var(--accent);stroke-width:1.6;stroke-linejoin:round}
.trace .over{stroke:var(--open);stroke-width:2.4}.tick{font-size:11px;fill:var(--quiet)}
.trace svg .band{fill:var(--normal);opacity:.14}
.keys{display:flex;flex-wrap:wrap;gap:.1rem 1.4rem;font-size:.8rem;color:var(--quiet)}
.key{display:inline-block;width:1.1rem;height:.6rem;background:#ece7d6;border:1px solid var(--faint)}
.key.band{background:#dcebe6}.key.over{height:0;border:0;border-block-start:3px solid var(--open);vertical-align:.25em}`;

const narrow = `
@media screen and (max-width:46rem){
.answers,#brought dl{display:block}.answers section+section{margin-block-start:1rem}
.contact{flex-basis:calc((100% - 27px)/10)}
dl>div{grid-template-columns:1fr}dd{grid-column:1;margin-block-end:.2rem}
.wide{overflow-x:auto}.wide table:not(.slim){min-width:44rem}
}`;

export const pageStyle = [
  colours,
  text,
  marks,
  owner,
  facts,
  tables,
  connector,
  trace,
  narrow,
  paperStyle,
].join('');
