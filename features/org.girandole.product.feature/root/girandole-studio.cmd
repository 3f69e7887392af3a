@echo off
rem Starts Girandole Studio. Needs Java 17 or newer: JAVA_HOME, else the java on the path.
rem All arguments go to the platform; without -data the workspace is the folder girandole in your home folder.
setlocal
set "HERE=%~dp0"
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
set "FOUND="
for /f "tokens=2,3" %%a in ('^""%JAVA%" -version 2^>^&1^"') do if "%%a"=="version" set "FOUND=%%~b"
if not defined FOUND (
  echo girandole-studio: no Java found. Install Java 17 or newer, or set JAVA_HOME to where it is.
  pause
  exit /b 1
)
for /f "delims=.-+_" %%m in ("%FOUND%") do set "MAJOR=%%m"
if %MAJOR% lss 17 (
  echo girandole-studio: found Java %FOUND%, needed is Java 17 or newer. Install one, or set JAVA_HOME.
  pause
  exit /b 1
)
rem A newer version may have been unpacked over an older one: the newer launcher is taken, and what the platform
rem remembers of the older bundles is forgotten. Its configuration says when it was made.
set "CLEAN="
fc /b "%HERE%configuration\config.ini" "%HERE%configuration\started.ini" >nul 2>nul || set "CLEAN=-clean"
if defined CLEAN copy /y "%HERE%configuration\config.ini" "%HERE%configuration\started.ini" >nul 2>nul
for %%j in ("%HERE%plugins\org.eclipse.equinox.launcher_*.jar") do set "LAUNCHER=%%j"
set "WORKSPACE=-data "%USERPROFILE%\girandole""
for %%a in (%*) do if /i "%%~a"=="-data" set "WORKSPACE="
:again
"%JAVA%w" -Xmx2g -jar "%LAUNCHER%" %CLEAN% -name "Girandole Studio" %WORKSPACE% %*
rem The platform ends with 23 when it wants to be started again.
if %ERRORLEVEL% equ 23 goto again
exit /b %ERRORLEVEL%
