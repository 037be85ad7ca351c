/** The drawing part of a sheet: its pictures and where they stand. */
import { type SheetPicture } from "../document";
import { base64Of } from "./base64";
import { type PackageParts } from "./package-parts";
import { relationshipNamespace, xmlHead, xmlText } from "./xml-text";
import { childNamed, childrenNamed, type XmlElement } from "./xml-tree";

/** English metric units in a pixel of 1/96 inch; 914,400 are an inch. */
const unitsPerPixel = 9525;

const namespaces =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" ' +
  `xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="${relationshipNamespace}"`;

/** The drawing of a sheet; its picture number n is the link rIdn. */
export const drawingXml = (pictures: readonly SheetPicture[]): string =>
  `${xmlHead}<xdr:wsDr ${namespaces}>${pictures.map((picture, index) => pictureXml(picture, String(index + 1))).join("")}</xdr:wsDr>`;

/** It stands in one cell and keeps its size when columns change. Element order: ECMA-376 part 1, 20.5.2.24 and 20.5.2.25. */
function pictureXml({ alt, row, column, width, height }: SheetPicture, number: string): string {
  const extent = `cx="${String(Math.round(width * unitsPerPixel))}" cy="${String(Math.round(height * unitsPerPixel))}"`;
  return (
    `<xdr:oneCellAnchor><xdr:from><xdr:col>${String(column)}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${String(row)}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>` +
    `<xdr:ext ${extent}/><xdr:pic><xdr:nvPicPr><xdr:cNvPr id="${number}" name="Picture ${number}" descr="${xmlText(alt)}"/>` +
    '<xdr:cNvPicPr><a:picLocks noChangeAspect="1"/></xdr:cNvPicPr></xdr:nvPicPr>' +
    `<xdr:blipFill><a:blip r:embed="rId${number}"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill>` +
    `<xdr:spPr><a:xfrm><a:off x="0" y="0"/><a:ext ${extent}/></a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr>` +
    "</xdr:pic><xdr:clientData/></xdr:oneCellAnchor>"
  );
}

export interface ReadDrawing {
  readonly pictures: readonly SheetPicture[];
  /** Whether it also holds what a document has no place for: charts, shapes, pictures of another kind. */
  readonly hasMore: boolean;
}

/** @param path of the drawing part */
export function readDrawing(parts: PackageParts, path: string): ReadDrawing {
  const images = parts.links(path, "image");
  const anchors = parts.xml(path)?.children ?? [];
  const pictures = anchors.flatMap((anchor) => readPicture(parts, images, anchor) ?? []);
  return { pictures, hasMore: pictures.length < anchors.length };
}

/** A PNG in an anchor of one cell; undefined for any other thing. */
function readPicture(parts: PackageParts, images: ReadonlyMap<string, string>, anchor: XmlElement): SheetPicture | undefined {
  const picture = childNamed(anchor, "pic");
  const from = childNamed(anchor, "from");
  const { cx, cy } = childNamed(anchor, "ext")?.attributes ?? {};
  const blip = childNamed(childNamed(picture, "blipFill"), "blip");
  const bytes = parts.bytes(images.get(blip?.attributes["r:embed"] ?? "") ?? "");
  if (!picture || !from || !bytes || !isPng(bytes) || anchor.name !== "oneCellAnchor") return undefined;
  const [properties] = childrenNamed(childNamed(picture, "nvPicPr"), "cNvPr");
  const whole = (name: string): number => Number(childNamed(from, name)?.text ?? 0);
  return {
    png: base64Of(bytes), alt: properties?.attributes["descr"] ?? "", row: whole("row"), column: whole("col"),
    width: Number(cx) / unitsPerPixel, height: Number(cy) / unitsPerPixel,
  };
}

/** The first four bytes of every PNG file. */
const isPng = ([first, ...rest]: Uint8Array): boolean => first === 0x89 && rest[0] === 0x50 && rest[1] === 0x4e && rest[2] === 0x47;
