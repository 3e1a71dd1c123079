// The part of the style sheet that is for paper. The size is left to the printer: A4 and Letter both fit. The
// owner's page is a page of its own; no finding, row or picture is torn in two.
export const paperStyle = `
@page{margin:11mm 13mm 13mm;@bottom-right{content:"\\2066" counter(page) " / " counter(pages) "\\2069";font:8pt system-ui,"DejaVu Sans",sans-serif;color:#565d66}}
@media print{
html{font-size:9pt;line-height:1.3}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}
main{max-width:none;padding:0}
.answers{gap:.5rem 1.6rem}.answers .marked .small{display:inline}.notices{margin-block:.6rem 0;padding-block:.35rem}.notices p+p{margin-block-start:.2rem}
.owner{font-size:.96rem;line-height:1.25}.answers #failed{font-size:1rem}h1{font-size:1.5rem}header{padding-block-end:.4rem}.summary{margin-block:.5rem .5rem}.strip{margin-block:.35rem .15rem}.strip span{height:1.4rem}.answers p+p{margin-block-start:.25rem}.answers h2{padding-block-start:.35rem;margin-block-end:.2rem}.answers li+li{margin-block-start:.15rem}.footer{margin-block-start:.8rem;padding-block-start:.35rem}
.technical{break-before:page}
.part{margin-block-start:0;padding-block-start:0;border:0}
h2,h3,h4,.row{break-after:avoid}
.connector+p{break-before:avoid}
.card,.contacts,.connector,table.short,.answers section,.trace,section>dl,.notices,tr,dl>div,svg{break-inside:avoid}
thead{display:table-header-group}
.contact .word{font-size:.56rem}
p,li{orphans:3;widows:3}
}`;
