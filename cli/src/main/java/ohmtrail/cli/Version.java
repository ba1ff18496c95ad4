package ohmtrail.cli;

import ohmtrail.cli.build.Build;
import picocli.CommandLine.IVersionProvider;

/** The version and the commit, as {@code --version} writes them. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {Build.current().toString()};
  }
}
