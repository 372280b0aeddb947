; Offers Chipdraft under "Open with" for the files of shops. They end in .json, so the default program stays what it was.

!macro customInstall
  WriteRegStr SHELL_CONTEXT "Software\Classes\Chipdraft.Shop" "" "Chipdraft shop"
  WriteRegStr SHELL_CONTEXT "Software\Classes\Chipdraft.Shop\DefaultIcon" "" "$appExe,0"
  WriteRegStr SHELL_CONTEXT "Software\Classes\Chipdraft.Shop\shell\open\command" "" '"$appExe" "%1"'
  WriteRegNone SHELL_CONTEXT "Software\Classes\.json\OpenWithProgids" "Chipdraft.Shop"
  System::Call "shell32::SHChangeNotify(i 0x08000000, i 0x1000, i 0, i 0)"
!macroend

!macro customUnInstall
  DeleteRegValue SHELL_CONTEXT "Software\Classes\.json\OpenWithProgids" "Chipdraft.Shop"
  DeleteRegKey SHELL_CONTEXT "Software\Classes\Chipdraft.Shop"
  System::Call "shell32::SHChangeNotify(i 0x08000000, i 0x1000, i 0, i 0)"
!macroend
