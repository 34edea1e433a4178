pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// One course: when it is served, its dishes, and while it is changed, what may be added.
Card {
    id: root

    required property EventController dinner
    required property string courseId
    required property string name
    required property string serving
    required property int minutes
    required property int dishCount
    required property string problem
    property bool choosing: false

    objectName: "course/" + courseId

    Row {
        width: root.room
        visible: !root.dinner.editing
        spacing: Theme.small

        Text {
            width: parent.width - time.width - Theme.small
            text: root.name
            color: Theme.ink
            font { pixelSize: Theme.titleSize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Accessible.role: Accessible.Heading
            Accessible.name: qsTr("%1, served at %2").arg(text).arg(root.serving)
        }
        Text {
            id: time
            text: root.serving
            color: Theme.serving
            font { pixelSize: Theme.titleSize; bold: true }
        }
    }
    Grid {
        width: root.room
        visible: root.dinner.editing
        columns: root.room > 420 ? 2 : 1
        spacing: Theme.small

        EntryRow {
            width: parent.columns === 2 ? Math.round((root.room - Theme.small) * 0.6) : root.room
            spoken: root.name
            readOnly: root.dinner.courses.count < 2
            onRemoved: root.dinner.removeCourse(root.courseId)

            TextEntry {
                objectName: "courseName"
                width: parent.width
                label: qsTr("Course")
                value: root.name
                onEdited: value => root.dinner.renameCourse(root.courseId, value)
            }
        }
        TimeEntry {
            objectName: "serving"
            width: parent.columns === 2 ? Math.round((root.room - Theme.small) * 0.4) : root.room
            label: qsTr("Served at")
            minutes: root.minutes
            problem: root.problem
            onEdited: minutes => root.dinner.setServing(root.courseId, minutes)
        }
    }
    Repeater {
        model: root.dinner.dishes

        DishRow {
            width: root.room
            visible: courseId === root.courseId
            height: visible ? implicitHeight : 0
            dinner: root.dinner
        }
    }
    WordsText {
        width: root.room
        visible: root.dishCount === 0
        text: root.dinner.editing ? qsTr("No dish yet. Add one from your recipes.") : qsTr("No dish yet.")
        color: Theme.inkMuted
    }
    ActionButton {
        objectName: "addDish"
        visible: root.dinner.editing
        symbol: root.choosing ? Symbol.Close : Symbol.Plus
        text: root.choosing ? qsTr("Enough") : qsTr("Add a dish")
        onClicked: root.choosing = !root.choosing
    }
    Flow {
        width: root.room
        visible: root.dinner.editing && root.choosing
        spacing: Theme.small

        Repeater {
            model: root.choosing ? root.dinner.recipes : null

            ActionButton {
                required property string recipeId
                required property string name
                required property string note

                objectName: "recipe/" + recipeId
                width: Math.min(implicitWidth, root.room)
                symbol: note.length > 0 ? Symbol.Dough : Symbol.Plus
                text: name
                spoken: qsTr("Add %1 to %2").arg(name).arg(root.name)
                onClicked: root.dinner.addDish(recipeId, root.courseId)
            }
        }
        WordsText {
            width: root.room
            visible: root.dinner.recipes.count === 0
            text: qsTr("There are no recipes yet: write one on the screen “Kitchen” first.")
        }
    }
}
