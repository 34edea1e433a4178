import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// Several lines of text. Tab goes on to the next field.
EntryFrame {
    id: root

    property string value
    property string example
    property bool readOnly: false
    property int leastLines: 3
    signal edited(value: string)

    onValueChanged: if (area.text !== root.value) area.text = root.value
    Component.onCompleted: area.text = root.value

    T.TextArea {
        id: area
        objectName: "field"
        width: parent.width
        implicitHeight: Math.ceil(Math.max(Theme.target, contentHeight + topPadding + bottomPadding, root.leastLines * metrics.lineSpacing + topPadding + bottomPadding))
        padding: Theme.small + Theme.tiny
        color: Theme.ink
        selectionColor: Theme.accent
        selectedTextColor: Theme.ink
        font.pixelSize: Theme.bodySize
        readOnly: root.readOnly
        wrapMode: TextEdit.Wrap
        textFormat: TextEdit.PlainText
        selectByMouse: true
        activeFocusOnTab: true
        onTextChanged: if (text !== root.value) root.edited(text)
        Keys.onTabPressed: nextItemInFocusChain(true).forceActiveFocus(Qt.TabFocusReason)
        Keys.onBacktabPressed: nextItemInFocusChain(false).forceActiveFocus(Qt.BacktabFocusReason)

        Accessible.name: root.label
        Accessible.description: root.spokenState

        FontMetrics {
            id: metrics
            font: area.font
        }
        background: EntryGround {
            focused: area.activeFocus
            wrong: root.problem.length > 0
        }
        clip: true

        Text {
            visible: area.text.length === 0
            x: area.leftPadding
            y: area.topPadding
            width: area.width - 2 * area.leftPadding
            text: root.example
            color: Theme.inkMuted
            font { pixelSize: Theme.bodySize; italic: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
    }
}
