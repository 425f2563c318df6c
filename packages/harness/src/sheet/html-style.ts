/**
 * Style of the printed sheets: black on white, ruled rows, nothing that needs colour or a second file. The paper is
 * whatever the printer holds, A4 or Letter; only its direction is asked for.
 */
export const SHEET_STYLE = `
:root{--lw-text:#000;--lw-soft:#444;--lw-ground:#fff;--lw-hair:#bbb;--lw-copper:#000;--lw-verdigris:#444;--lw-blue:#666;--lw-amber:#222;--lw-red:#000;
--lw-sans:'IBM Plex Sans Condensed','Roboto Condensed','Arial Narrow','Liberation Sans Narrow','Helvetica Neue',Arial,'DejaVu Sans Condensed',sans-serif}
*{box-sizing:border-box}
html{background:#fff;color:#000;font:9pt/1.3 var(--lw-sans);font-variant-numeric:tabular-nums lining-nums;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0 auto;max-width:190mm;padding:6mm}
h1{font-size:19pt;line-height:1.1;margin:0;font-weight:600;letter-spacing:-.01em}
h2{font-size:10.5pt;line-height:1.2;margin:5mm 0 1mm;font-weight:700;break-after:avoid}
p{margin:0 0 1.5mm}
.lead,.note{max-width:150mm}
.lead{margin-top:1.5mm}
.note,.soft{color:#444}
.sheet{break-before:page;margin-top:14mm;width:100%;border-collapse:collapse}
.sheet>thead>tr>td,.sheet>tbody>tr>td,.sheet>tfoot>tr>td{padding:0}
.sheet.landscape{page:lying}
.running{display:flex;gap:6mm;align-items:baseline;border-bottom:1.2pt solid #000;padding:0 0 1.2mm;margin-bottom:2.5mm}
.running b{font-size:12pt}
.running .standing{flex:1;text-align:right;font-weight:600}
.running .date{white-space:nowrap}
.fill{display:inline-block;border-bottom:.6pt solid #000;min-width:24mm;height:1em}
.foot{border-top:.6pt solid #000;margin-top:3mm;padding-top:1.2mm;font-size:7.6pt;line-height:1.28;columns:2;column-gap:6mm}
.foot p{margin:0 0 .6mm;break-inside:avoid}
table.rows{width:100%;border-collapse:collapse;border-bottom:.8pt solid #000}
.rows.fixed{table-layout:fixed;font-size:.94em}
.rows.fixed td,.rows.fixed th{overflow-wrap:break-word}
.rows caption{text-align:left}
.rows th,.rows td{text-align:left;vertical-align:top;padding:.8mm 0 .65mm 2.4mm;border-bottom:.4pt solid #999}
.rows th:first-child,.rows td:first-child{padding-left:0}
.rows thead th{font-size:7.6pt;line-height:1.15;font-weight:600;color:#333;vertical-align:bottom;border-bottom:.8pt solid #000;padding-bottom:.6mm}
.rows tr{break-inside:avoid}
.rows .number{text-align:right;white-space:nowrap}
.rows .number+:not(.number):not(.tick){padding-left:4mm}
.rows thead .number{white-space:normal}
.rows .words{white-space:normal;font-size:7.6pt;line-height:1.2}
.rows .short{white-space:nowrap}
.landscape .rows{line-height:1.18}
.rows .under{display:block;font-size:7.6pt;line-height:1.2;color:#444}
.rows .foot-row td{font-weight:600;border-bottom:0;border-top:.4pt solid #000}
.rows .foot-row~.foot-row td{border-top:0}
.rows .tick{width:9mm;text-align:center}
.box{display:inline-block;width:3.4mm;height:3.4mm;border:.8pt solid #000;vertical-align:-.4mm}
.rows .blank{white-space:nowrap;width:24mm}
.rows .blank .fill{min-width:calc(100% - 6mm);max-width:17mm}
.cover{margin-top:0;break-before:auto}
.cover .title{display:flex;gap:6mm;align-items:end;justify-content:space-between;border-bottom:1.6pt solid #000;padding-bottom:2mm;margin-bottom:3mm}
.cover ul,.cover ol{margin:0 0 3mm;padding-left:5mm}
.cover .judgement{font-size:11pt;font-weight:700}
.cover svg{margin:3mm 0;width:100%;max-height:118mm}
.two{columns:2;column-gap:8mm}
@page{margin:12mm 12mm 14mm;@bottom-right{content:counter(page) " / " counter(pages);font:8pt sans-serif}}
@page lying{size:landscape}
@media screen{.sheet.landscape{width:250mm}body{max-width:262mm}.cover,.sheet:not(.landscape){max-width:186mm}.rows{overflow-x:auto}}
@media print{html{font-size:8.6pt}body{padding:0;max-width:none}.sheet{margin-top:0}}
`;
