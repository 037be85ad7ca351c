import { answerHeadings } from "../src/functions/answer-headings";

/** The text of headings.json: what the Functions view shows of every answer, without the parts of the program that answer. */
export const headingsText = (): string => `${JSON.stringify({ us: answerHeadings("us"), metric: answerHeadings("metric") }, undefined, 2)}\n`;
