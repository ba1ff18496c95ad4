#!/bin/sh
# Makes of the program as built what is handed on: an image with its own Java, a Debian package,
# and their checksums. The same sources make the same bytes but for one file, the archive that Java
# makes of its own classes (lib/runtime/lib/server/classes.jsa).
#
#   release.sh BUILD VERSION TIME
#
# BUILD holds ohmtrail/ (bin and lib), and takes release/; TIME is that of every file, as
# 2025-01-01T00:00:00Z. Needs jlink of the JDK, dpkg-deb, tar, gzip, sha256sum.
set -eu
build=$1
version=$2
time=$(date -u -d "$3" +%s)
here=$(cd "$(dirname "$0")" && pwd -P)
top=$here/../../../..
out=$build/release
image=$out/ohmtrail-$version
export LC_ALL=C SOURCE_DATE_EPOCH="$time"
umask 022

rm -rf "$out"
mkdir -p "$image/share/man" "$image/share/bash-completion/completions" \
  "$image/share/zsh/site-functions" "$image/share/doc/ohmtrail" "$image/share/ohmtrail"
cp -R "$build/ohmtrail/bin" "$build/ohmtrail/lib" "$image"
rm -f "$image/bin/ohmtrail.bat"
chmod 755 "$image/bin/ohmtrail"

# Java itself, without what draws on a screen: pictures are drawn in memory.
jdk=${JAVA_HOME:-$(dirname "$(dirname "$(readlink -f "$(command -v jlink)")")")}
"$jdk/bin/jlink" --add-modules java.base,java.desktop,java.logging,java.xml,jdk.unsupported,jdk.zipfs \
  --strip-debug --no-header-files --no-man-pages --compress=2 --output "$image/lib/runtime"
rm -f "$image/lib/runtime/lib/libawt_xawt.so" "$image/lib/runtime/lib/libjawt.so" \
  "$image/lib/runtime/lib/libsplashscreen.so"
# Stripped of symbols as the JDK of a distribution is not.
find "$image/lib/runtime/lib" -name '*.so' -exec strip --strip-unneeded {} + 2>/dev/null || true
"$image/lib/runtime/bin/java" -Xshare:dump >/dev/null

OHMTRAIL_CACHE=none "$image/bin/ohmtrail" manual "$out/manual"
cp -R "$out/manual/man1" "$image/share/man"
cp "$out/manual/ohmtrail.bash" "$image/share/bash-completion/completions/ohmtrail"
cp "$out/manual/_ohmtrail" "$image/share/zsh/site-functions/_ohmtrail"
rm -r "$out/manual"
gzip -9n "$image"/share/man/man1/*.1
OHMTRAIL_CACHE=none "$image/bin/ohmtrail" examples "$image/share/ohmtrail" >/dev/null
for schema in "$top"/shared/schema/*.json; do
  cp "$schema" "$image/share/ohmtrail/schema"
done
cp "$top/docs/LICENSE.txt" "$image/share/doc/ohmtrail/copyright"
cp "$top/docs/CHANGELOG.md" "$image/share/doc/ohmtrail/changelog"
gzip -9n "$image/share/doc/ohmtrail/changelog"
find "$image" -exec touch -h -d "@$time" {} +

tar -C "$out" --sort=name --mtime="@$time" --owner=0 --group=0 --numeric-owner -cf - \
  "ohmtrail-$version" | gzip -9n >"$out/ohmtrail-$version-linux.tar.gz"

# The Debian package: the image below /usr/lib, the rest where Debian has it.
case $version in
  *-SNAPSHOT) debian=${version%-SNAPSHOT}~snapshot ;;
  *) debian=$version ;;
esac
architecture=$(dpkg --print-architecture)
root=$out/debian
mkdir -p "$root/DEBIAN" "$root/usr/bin" "$root/usr/lib/ohmtrail" "$root/usr/share/zsh"
cp -R "$image/bin" "$image/lib" "$root/usr/lib/ohmtrail"
cp -R "$image/share/." "$root/usr/share"
mv "$root/usr/share/zsh/site-functions" "$root/usr/share/zsh/vendor-completions"
ln -s ../lib/ohmtrail/bin/ohmtrail "$root/usr/bin/ohmtrail"
cat >"$root/DEBIAN/control" <<CONTROL
Package: ohmtrail
Version: $debian
Architecture: $architecture
Maintainer: Ohmtrail <ohmtrail@localhost>
Installed-Size: $(du -sk --apparent-size "$root/usr" | cut -f1)
Depends: libc6, zlib1g
Recommends: fontconfig, fonts-dejavu-core
Section: science
Priority: optional
Description: finds the bad connection in a building circuit
 From the circuit as wired and the voltages read so far, with the load that was
 on at each, says which joint has gone bad: in which box, on which conductor,
 how many ohms, how sure, and which box to open first.
 .
 Only pictures as PNG and curves need the fonts.
CONTROL
(cd "$root" && find usr -type f | sort | xargs md5sum >DEBIAN/md5sums)
find "$root" -exec touch -h -d "@$time" {} +
dpkg-deb --root-owner-group -Zxz --build "$root" "$out/ohmtrail_${debian}_$architecture.deb" >/dev/null
rm -r "$root"

[ ! -f "$build/bom.json" ] || cp "$build/bom.json" "$out/ohmtrail-$version-sbom.json"
cp "$build/ohmtrail/lib/ohmtrail.jar" "$out/ohmtrail-$version.jar"
(cd "$out" && sha256sum -- *.deb *.tar.gz *.jar *.json 2>/dev/null >SHA256SUMS || sha256sum -- *.deb *.tar.gz *.jar >SHA256SUMS)
