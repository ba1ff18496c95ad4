package ohmtrail.cli.report.pdf;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import ohmtrail.cli.report.document.Document;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** What a file says of itself to be PDF/A-2 (ISO 19005-2) and PDF/UA-1 (ISO 14289-1). */
final class Metadata {
  private static final String SRGB = "sRGB IEC61966-2.1";

  private Metadata() {}

  static void write(Document document, PDDocument pdf) throws IOException {
    PDDocumentCatalog catalog = pdf.getDocumentCatalog();
    catalog.setLanguage("en");
    PDMarkInfo marked = new PDMarkInfo();
    marked.setMarked(true);
    catalog.setMarkInfo(marked);
    PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
    preferences.setDisplayDocTitle(true);
    catalog.setViewerPreferences(preferences);
    PDDocumentInformation information = new PDDocumentInformation();
    information.setTitle(safe(document.title()));
    information.setSubject(safe(document.subject()));
    pdf.setDocumentInformation(information);
    PDMetadata metadata = new PDMetadata(pdf);
    metadata.importXMPMetadata(xmp(document).getBytes(StandardCharsets.UTF_8));
    catalog.setMetadata(metadata);
    byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
    PDOutputIntent intent = new PDOutputIntent(pdf, new ByteArrayInputStream(profile));
    intent.setInfo(SRGB);
    intent.setOutputCondition(SRGB);
    intent.setOutputConditionIdentifier(SRGB);
    intent.setRegistryName("http://www.color.org");
    catalog.addOutputIntent(intent);
  }

  private static String safe(String words) {
    StringBuilder safe = new StringBuilder();
    words
        .codePoints()
        .forEach(
            c ->
                safe.appendCodePoint(
                    Character.isISOControl(c)
                            || Character.getType(c) == Character.SURROGATE
                            || c == 0xFFFE
                            || c == 0xFFFF
                        ? 0xFFFD
                        : c));
    return safe.toString();
  }

  private static String xml(String words) {
    return safe(words).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  private static String xmp(Document document) {
    return """
        <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
        <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
        <dc:title><rdf:Alt><rdf:li xml:lang="x-default">TITLE</rdf:li></rdf:Alt></dc:title>
        <dc:description><rdf:Alt><rdf:li xml:lang="x-default">SUBJECT</rdf:li></rdf:Alt></dc:description>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
        <pdfaid:part>2</pdfaid:part><pdfaid:conformance>A</pdfaid:conformance>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
        <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
         xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
         xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
        <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
        <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
        <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
        <pdfaProperty:name>part</pdfaProperty:name>
        <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
        <pdfaProperty:category>internal</pdfaProperty:category>
        <pdfaProperty:description>Part of ISO 14289 that the file follows</pdfaProperty:description>
        </rdf:li></rdf:Seq></pdfaSchema:property>
        </rdf:li></rdf:Bag></pdfaExtension:schemas>
        </rdf:Description>
        </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>
        """
        .replace("TITLE", xml(document.title()))
        .replace("SUBJECT", xml(document.subject()));
  }
}
