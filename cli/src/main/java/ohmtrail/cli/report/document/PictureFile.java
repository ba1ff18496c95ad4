package ohmtrail.cli.report.document;

/** A picture file that was opened and found to be one. Immutable. */
public final class PictureFile {
  /** What it is encoded as. */
  public enum Kind {
    /** JPEG. */
    JPEG("image/jpeg"),
    /** PNG. */
    PNG("image/png");

    private final String mediaType;

    Kind(String mediaType) {
      this.mediaType = mediaType;
    }

    /** Its media type. */
    public String mediaType() {
      return mediaType;
    }
  }

  private final Kind kind;
  private final int width;
  private final int height;
  private final byte[] content;

  /**
   * Copies the content.
   *
   * @param width pixels
   * @param height pixels
   */
  public PictureFile(Kind kind, int width, int height, byte[] content) {
    this.kind = kind;
    this.width = width;
    this.height = height;
    this.content = content.clone();
  }

  /** What it is encoded as. */
  public Kind kind() {
    return kind;
  }

  /** Pixels across. */
  public int width() {
    return width;
  }

  /** Pixels down. */
  public int height() {
    return height;
  }

  /** The file as it is; a copy. */
  public byte[] content() {
    return content.clone();
  }
}
