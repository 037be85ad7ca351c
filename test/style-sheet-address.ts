export default "style-sheet.css";
