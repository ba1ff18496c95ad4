@echo off
rem Starts Ohmtrail with the Java of JAVA_HOME, or else with that on the path.
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
"%java%" -Xshare:auto -XX:+UseSerialGC -Xlog:disable -Xlog:all=error:stderr -Djava.awt.headless=true -jar "%~dp0..\lib\ohmtrail.jar" %*
exit /b %ERRORLEVEL%
