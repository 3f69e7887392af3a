@echo off
rem Starts Girandole Studio. Needs Java 17 or newer: JAVA_HOME, else the java on the path.
setlocal
set "HERE=%~dp0"
set "JAVA=javaw"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\javaw"
for %%j in ("%HERE%plugins\org.eclipse.equinox.launcher_*.jar") do set "LAUNCHER=%%j"
set "WORKSPACE=-data "%USERPROFILE%\girandole""
echo %* | findstr /c:"-data" >nul && set "WORKSPACE="
:again
"%JAVA%" -Xmx2g -jar "%LAUNCHER%" -name "Girandole Studio" %WORKSPACE% %*
rem The platform ends with 23 when it wants to be started again.
if %ERRORLEVEL% equ 23 goto again
if %ERRORLEVEL% equ 9009 echo girandole-studio: no Java found. Install Java 17 or newer, or set JAVA_HOME.
exit /b %ERRORLEVEL%
