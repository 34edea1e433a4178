import QtQuick
import Suppertide.Ui

// Something to take out of freezer or fridge ahead of its step.
TaskWordsColumn {
    id: root

    required property string what
    required property string way
    required property string when
    required property string dish
    required property bool due

    symbol: due ? Symbol.Bell : Symbol.TakeOut
    title: due ? qsTr("Now: %1").arg(what) : qsTr("%1  %2").arg(when).arg(what)
    detail: qsTr("%1, for %2").arg(way).arg(dish)
}
