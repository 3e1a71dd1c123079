// The part of the style sheet that is for paper. The size is left to the printer: A4 and Letter both fit. The
// owner's page is a page of its own; no finding, row or picture is torn in two.
export const paperStyle = `
@page{margin:13mm 14mm 15mm;@bottom-right{content:"\\2066" counter(page) " / " counter(pages) "\\2069";font:8pt system-ui,"DejaVu Sans",sans-serif;color:#565d66}}
@media print{
html{font-size:9.2pt;line-height:1.32}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}
main{max-width:none;padding:0}
.answers{gap:.6rem 1.6rem}
.summary{margin-block:.7rem .7rem}.answers h2{padding-block-start:.35rem;margin-block-end:.2rem}.answers li+li{margin-block-start:.15rem}.footer{margin-block-start:.8rem;padding-block-start:.35rem}
.technical{break-before:page}
.part{margin-block-start:0;padding-block-start:0;border:0}
h2,h3,h4,.row{break-after:avoid}
.card,.contacts,.answers section,.trace,section>dl,.notices,tr,dl>div,svg{break-inside:avoid}
thead{display:table-header-group}
.contact .word{font-size:.56rem}
p,li{orphans:3;widows:3}
}`;
